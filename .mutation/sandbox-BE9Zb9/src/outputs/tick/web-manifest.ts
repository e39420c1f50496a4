/** For browsers that put the pages among their apps; its addresses are relative to its own. */
// @ts-nocheck

export const webManifest = JSON.stringify({
  name: "Feedround",
  start_url: "./",
  scope: "./",
  display: "standalone",
  background_color: "#f6f3ea",
  theme_color: "#1c5c43",
  icons: [
    { src: "-/icon-192.png", sizes: "192x192", type: "image/png" },
    { src: "-/icon-512.png", sizes: "512x512", type: "image/png" },
  ],
});
