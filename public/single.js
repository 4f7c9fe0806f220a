// The end of the one-file page's only script, behind wasm-bindgen's glue. The same text runs twice: in the
// page, and, from a blob, as its Web Worker, which gets the page's compiled module by message.
if (typeof document === "undefined") {
  self.onmessage = ({ data }) => {
    self.onmessage = null;
    try {
      initSync({ module: data.module });
    } catch (error) {
      self.postMessage(String(error));
    }
  };
} else {
  (async () => {
    const text = (id) => document.getElementById(id).textContent;
    globalThis.tankfulWorker = URL.createObjectURL(new Blob([text("code")], { type: "text/javascript" }));
    const bytes = Uint8Array.from(atob(text("wasm")), (letter) => letter.charCodeAt(0));
    await __wbg_init({ module_or_path: bytes });
  })().catch((error) => {
    console.error(error);
    document.getElementById("not-started").hidden = false;
  });
}
