/** Links to a place on the page: under a server the page's base is another folder. */
// @ts-nocheck


/** @param ask for what is not there yet */
export function onLinksInPage(ask: () => void): void {
  document.addEventListener("click", (event) => {
    const link = event.target instanceof Element ? event.target.closest("a[href^='#']") : null;
    const id = decodeURI(link?.getAttribute("href") ?? "").slice(1);
    if (id === "") return;
    event.preventDefault();
    const goTo = (): boolean => {
      const place = document.getElementById(id);
      place?.closest("details")?.setAttribute("open", "");
      place?.scrollIntoView();
      (place?.closest("details")?.querySelector("summary") ?? place)?.focus();
      return place !== null;
    };
    if (goTo()) return;
    const parts = document.getElementById("parts");
    const coming = new MutationObserver(() => {
      if (goTo()) coming.disconnect();
    });
    if (parts !== null) coming.observe(parts, { childList: true, subtree: true });
    ask();
  });
}
