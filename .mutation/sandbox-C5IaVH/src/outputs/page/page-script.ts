/**
 * Puts in what the page cannot know when it is written: what is asked for on the reader's day, in the
 * garden's zone, how many days the next round is away, which of the days are past, and the warnings of
 * the two weeks from then. All of it stands on the page already; without a script the page names days
 * alone. One constant, so that a Content-Security-Policy can name its hash.
 */
// @ts-nocheck

export const pageScript = `(() => {
  const { zone, today: written, end, done } = document.documentElement.dataset;
  const head = document.getElementById("today");
  if (!head || !zone || !written) return;
  const parts = new Intl.DateTimeFormat("en", { timeZone: zone, calendar: "gregory", numberingSystem: "latn", year: "numeric", month: "2-digit", day: "2-digit" }).formatToParts(new Date());
  const part = (type) => parts.find((p) => p.type === type).value;
  const today = [part("year"), part("month"), part("day")].join("-");
  const daysTo = (day) => Math.round((Date.parse(day) - Date.parse(today)) / 864e5);
  const away = (day) => {
    const days = daysTo(day);
    return days === 0 ? "today" : days === 1 ? "tomorrow" : "in " + days + " days";
  };
  const put = (selector, text) => {
    const place = head.querySelector(selector);
    if (!place) return;
    place.hidden = !text;
    place.textContent = text || "";
  };
  const asked = [...document.querySelectorAll("#rounds [data-asks]")].filter((d) => d.dataset.day >= today);
  const now = asked.find((d) => d.dataset.day === today);
  const ahead = asked.find((d) => d.dataset.day > today);
  const round = [...document.querySelectorAll("#rounds [data-totals]")].find((d) => d.dataset.day >= today);
  const isOver = today > end;
  if (asked.length > 0 && !isOver) put("h2", now ? "Today, " + now.dataset.short + ": " + now.dataset.asks : "Nothing to do today");
  else put("h2", done);
  if (isOver) put(".then", now && "Still to do: " + now.dataset.asks);
  else put(".then", ahead && (!round || round.dataset.day !== ahead.dataset.day) && "Next: " + ahead.dataset.short + ", " + away(ahead.dataset.day) + ": " + ahead.dataset.asks);
  put(".none", asked.length > 0 && !isOver && !round && done);
  const old = -daysTo(written);
  const told = head.querySelector(".written");
  if (old > 14) told.textContent += ", " + old + " days ago: what has changed since is not in it";
  told.hidden = old === 0;
  told.classList.toggle("old", old > 14);
  const next = document.getElementById("next");
  if (next && !round) next.remove();
  else if (next) {
    if (round.dataset.day !== next.dataset.day) {
      next.dataset.day = round.dataset.day;
      next.querySelector(".day").textContent = round.dataset.long;
      next.querySelector(".day").setAttribute("datetime", round.dataset.day);
      next.querySelector(".totals").textContent = round.dataset.totals;
      next.querySelector(".round-body").replaceChildren(...[...round.querySelector(".round-body").childNodes].map((n) => n.cloneNode(true)));
    }
    // They stand on top of the page.
    if (daysTo(round.dataset.day) <= 14) for (const told of next.querySelectorAll(".round-body > .warning")) told.remove();
    next.querySelector(".when").textContent = away(round.dataset.day);
  }
  if (old === 0) return;
  for (const week of document.querySelectorAll(".week")) week.hidden = today < week.dataset.from || today > week.dataset.to;
  const past = document.querySelector("#rounds .past");
  if (past) for (const day of document.querySelectorAll("#rounds .to-come > [data-day]")) if (day.dataset.day < today) {
    past.hidden = false;
    past.querySelector(".days").append(day);
  }
  const soon = [...document.querySelectorAll("#warnings [data-day]")].filter((w) => daysTo(w.dataset.day) >= 0 && daysTo(w.dataset.day) <= 14);
  const fold = head.querySelector(".soon");
  const who = [...new Set(soon.map((w) => w.dataset.who).filter(Boolean))];
  fold.hidden = soon.length === 0;
  fold.querySelector("summary").textContent = soon.length === 1 ? "Warning: " + soon[0].querySelector(".message").textContent : soon.length + " warnings for the next two weeks" + (who.length > 0 ? ": " + who.join(", ") : "");
  fold.querySelector("div").replaceChildren(...soon.map((w) => w.cloneNode(true)));
})();`;
