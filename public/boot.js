// Starts the page: fetches the WebAssembly once and runs it. Where that cannot work (a browser that is
// too old, a download that broke off), the page says so instead of staying blank.
try {
  const { default: init } = await import("./page.js");
  await init({ module_or_path: new URL("./page_bg.wasm", import.meta.url) });
} catch (error) {
  console.error(error);
  const note = document.getElementById("not-started");
  if (note) note.hidden = false;
}
