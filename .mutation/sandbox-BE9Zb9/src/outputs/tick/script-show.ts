/** What the page says of marks that wait or were sent late, and of its own age. */
// @ts-nocheck

export const showScript = `
  const touched = new Set();
  const isTouched = () => [...touched].some((form) => form.isConnected);
  const made = (tag, text, more) => Object.assign(document.createElement(tag), { textContent: text || "" }, more);
  const pressed = (text, act) => {
    const button = made("button", text, { type: "button", className: "small" });
    button.addEventListener("click", act);
    return button;
  };
  const timeOf = (at) => new Intl.DateTimeFormat(page.locale || "en-GB", { timeZone: page.zone, weekday: "short", day: "numeric", month: "short", hour: "numeric", minute: "2-digit" }).format(at);
  const named = ({ words, name, at }) => (name === page.name ? "" : name + ", ") + words + " (marked " + timeOf(at) + ")";
  const unsentItem = (mark) => {
    const item = made("li");
    const line = made("p", named(mark), { dir: "auto" });
    item.append(line);
    if (mark.trouble) item.append(made("p", "The server does not take it: " + mark.trouble));
    item.append(pressed("Do not send it", () => {
      forget("mark", mark.id);
      show();
    }));
    return item;
  };
  const showUnsent = (marks) => {
    const box = document.getElementById("unsent");
    box.hidden = marks.length === 0;
    if (box.hidden) return box.replaceChildren();
    const head = made("h2", marks.length === 1 ? "1 mark waits to be sent" : marks.length + " marks wait to be sent");
    const how = made("p", (isReached ? "" : "The server was not reached. ") + "It is tried again by itself; what waits stays in this browser, also when the page is closed.");
    const list = made("ul", "", { className: "unsent" });
    list.append(...marks.map(unsentItem));
    box.replaceChildren(head, how, list, pressed("Send now", () => send()));
  };
  const showWaiting = (marks) => {
    for (const old of document.querySelectorAll(".waits-told")) old.remove();
    for (const button of document.querySelectorAll("form[data-key] button")) button.disabled = false;
    for (const { id, key, garden } of marks) {
      if (garden !== page.garden) continue;
      const isNow = sending.has(id);
      for (const thing of document.querySelectorAll("[data-thing-key]")) if (thing.dataset.thingKey === key) {
        const after = thing.querySelector("summary, h3");
        const told = made("p", isNow ? "Being sent" : "Waits to be sent", { className: "waits-told" });
        if (after) after.append(told);
        else thing.append(told);
      }
      if (!key.startsWith("seen ")) for (const form of document.querySelectorAll("form[data-key]")) if (form.dataset.key === key) {
        for (const button of form.querySelectorAll("button")) button.disabled = true;
      }
    }
  };
  const showLate = () => {
    for (const old of document.querySelectorAll("[data-late]")) old.remove();
    const told = document.getElementById("told");
    for (const late of keptOf("told")) {
      const box = parsed(late.html).querySelector("[data-outcome]");
      if (!box) continue;
      box.dataset.late = late.id;
      const head = box.querySelector("h2");
      head.id = "late-" + late.id;
      box.setAttribute("aria-labelledby", head.id);
      head.after(made("p", named(late), { dir: "auto" }));
      box.append(pressed("Close", () => {
        forget("told", late.id);
        show();
      }));
      told.append(document.adoptNode(box));
    }
  };
  const today = () => {
    const parts = new Intl.DateTimeFormat("en", { timeZone: page.zone, calendar: "gregory", numberingSystem: "latn", year: "numeric", month: "2-digit", day: "2-digit" }).formatToParts(new Date());
    return ["year", "month", "day"].map((type) => parts.find((part) => part.type === type).value).join("-");
  };
  const isOld = () => page.today !== undefined && page.today !== today();
  // What was of today when the page was made is past by now.
  const showAge = () => {
    const note = document.getElementById("old");
    note.hidden = !page.kept && !isOld();
    if (note.hidden) return;
    const made = page.kept ? "The server was not reached: this page is as it was on " + timeOf(Date.parse(page.kept)) + "." : "This page was made on another day.";
    note.textContent = made + (isOld() ? " What you mark without naming a day is of today." : "");
    for (const form of document.querySelectorAll("form[data-day]")) if (form.dataset.day <= today()) {
      for (const button of form.querySelectorAll(".by-then")) button.hidden = false;
    }
    for (const form of document.querySelectorAll("form[data-day]")) if (form.dataset.day < today()) {
      for (const past of form.querySelectorAll(".that-day")) past.hidden = false;
      for (const button of form.querySelectorAll("[data-later]")) button.textContent = button.dataset.later;
    }
  };
  const show = () => {
    const marks = keptOf("mark");
    showUnsent(marks.filter(({ id }) => !sending.has(id)));
    showWaiting(marks);
    showLate();
    showAge();
  };
  const said = (next, mark) => {
    const box = next.querySelector("[data-outcome]");
    if (box && !mark) box.remove();
    return box;
  };
  // What somebody is typing stays: then only what was written is told.
  const renew = (next, mark) => {
    const box = said(next, mark);
    const focus = box && mark;
    if (isTouched()) {
      if (focus) document.getElementById("told").replaceChildren(document.adoptNode(box));
      if (mark) for (const form of document.querySelectorAll("form[data-key]")) if (form.dataset.key === mark.key) form.remove();
    } else {
      const open = new Set([...document.querySelectorAll("details.card[open]")].map((card) => card.dataset.thingKey));
      document.querySelector("main").replaceWith(document.adoptNode(next.querySelector("main")));
      for (const card of document.querySelectorAll("details.card")) if (open.has(card.dataset.thingKey)) card.open = true;
      for (const key of ["today", "kept"]) {
        if (next.documentElement.dataset[key]) page[key] = next.documentElement.dataset[key];
        else delete page[key];
      }
      keepPage();
    }
    show();
    if (!focus) return;
    scrollTo(0, 0);
    document.getElementById("outcome-head").focus({ preventScroll: true });
  };
  let renewedAt = Date.now();
  const refresh = async () => {
    renewedAt = Date.now();
    const answer = await asked(page.garden || "./", {});
    const next = answer && answer.status === 200 && parsed(answer.text);
    if (next && next.querySelector("#unsent") && !isTouched() && sending.size === 0) renew(next);
  };`;
