/**
 * What the browser keeps: marks that wait, each under a key of its own so that two tabs never write
 * over each other, and what became of those sent late.
 */
// @ts-nocheck

export const keptScript = `
  const page = document.documentElement.dataset;
  const kinds = { mark: "feedround-mark-", told: "feedround-told-" };
  const keptOf = (kind) => Object.keys(localStorage).filter((key) => key.startsWith(kinds[kind])).flatMap((key) => {
    try {
      return [JSON.parse(localStorage.getItem(key))];
    } catch {
      return [];
    }
  }).sort((a, b) => a.at - b.at);
  const keep = (kind, one) => localStorage.setItem(kinds[kind] + one.id, JSON.stringify(one));
  const forget = (kind, id) => localStorage.removeItem(kinds[kind] + id);
  const isKept = (kind, id) => localStorage.getItem(kinds[kind] + id) !== null;
  const freshId = () => btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(16)))).replace(/[+]/g, "-").replace(/[/]/g, "_").replace(/=/g, "");
  const markOf = (form, button) => {
    const [id, at] = [freshId(), Date.now()];
    const chosen = [...form.querySelectorAll("select[required]")].map((list) => list.selectedOptions[0].textContent);
    const fields = [...new FormData(form)].filter(([name]) => name !== "form");
    fields.push(["form", id]);
    if (button && button.name) fields.push([button.name, button.value]);
    if (!fields.some(([name, value]) => name === "kind" && value === "undo")) fields.push(["tapped", String(at)]);
    const words = [button ? button.textContent.trim() : "", form.dataset.thing, ...chosen].filter(Boolean);
    return { id, at, fields, words: words[0] + ": " + words.slice(1).join(", "), key: form.dataset.key, garden: page.garden, name: page.name };
  };`;
