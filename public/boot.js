// Starts the page: fetches the WebAssembly once and runs it. Where that cannot work (a browser that is
// too old, a download that broke off), the page says so instead of staying blank.

// Held for as long as the page is open, under a name of this release's own: the service worker keeps the
// files of every release that is open somewhere.
navigator.locks
  ?.request(import.meta.url, { mode: "shared" }, () => {
    navigator.serviceWorker?.controller?.postMessage("sweep");
    return new Promise(() => {});
  })
  .catch(() => {});

try {
  const { default: init } = await import("./page.js");
  await init({ module_or_path: new URL("./page_bg.wasm", import.meta.url) });
} catch (error) {
  console.error(error);
  const note = document.getElementById("not-started");
  if (note) note.hidden = false;
}
