/**
 * Keeps a page that was written on another day true: counts the days again, puts the round that is
 * next by now in the first place, and tells the water of this week. The page is whole without it. One constant, so that a
 * Content-Security-Policy can name its hash.
 */
export const pageScript = `(() => {
  const root = document.documentElement;
  const next = document.getElementById("next");
  const { zone, today: written } = root.dataset;
  if (!next || !zone || !written) return;
  const parts = new Intl.DateTimeFormat("en", { timeZone: zone, calendar: "gregory", numberingSystem: "latn", year: "numeric", month: "2-digit", day: "2-digit" }).formatToParts(new Date());
  const part = (type) => parts.find((p) => p.type === type).value;
  const today = [part("year"), part("month"), part("day")].join("-");
  if (today === written) return;
  for (const week of next.querySelectorAll(".week")) week.hidden = today < week.dataset.from || today > week.dataset.to;
  const away = (day) => {
    const days = Math.round((Date.parse(day) - Date.parse(today)) / 864e5);
    return days === 0 ? "today" : days === 1 ? "tomorrow" : days > 0 ? "in " + days + " days" : -days + (days === -1 ? " day ago" : " days ago");
  };
  const rounds = [...document.querySelectorAll("details[data-day]:not([data-given])")];
  const round = rounds.find((r) => r.dataset.day >= today);
  const body = next.querySelector(".round-body");
  const until = next.querySelector(".until");
  const when = next.querySelector(".when");
  if (!round) {
    if (rounds.length === 0) return;
    next.querySelector(".day").textContent = "All rounds of this season are done";
    for (const gone of [when, body, until, next.querySelector(".totals")]) if (gone) gone.remove();
    return;
  }
  if (round.dataset.day !== next.dataset.day) {
    next.dataset.day = round.dataset.day;
    next.querySelector(".day").textContent = round.dataset.long;
    next.querySelector(".totals").textContent = round.dataset.totals;
    body.replaceChildren(...[...round.querySelector(".round-body").childNodes].map((n) => n.cloneNode(true)));
  }
  if (when) when.textContent = away(round.dataset.day);
  const jobs = [...document.querySelectorAll("#making .jobs li")].filter((j) => j.dataset.day >= today && j.dataset.day <= round.dataset.day);
  if (until) {
    until.hidden = jobs.length === 0;
    until.querySelector("ol").replaceChildren(...jobs.map((j) => j.cloneNode(true)));
  }
})();`;
