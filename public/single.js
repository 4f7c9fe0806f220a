// The end of the one-file page's only script, behind wasm-bindgen's glue. The same text runs twice: in the
// page, and, from a blob, as its Web Worker, which gets the page's compiled module by message.
const textOf = (id) => self.tankfulParts?.[id] ?? document.getElementById(id).textContent;
const bytesOf = (id) => Uint8Array.from(atob(textOf(id)), (letter) => letter.charCodeAt(0));

// A part of the program, for glue that expects it from a server.
const part = async (id) => new Response(bytesOf(id));

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
    const code = document.getElementById("code").textContent;
    // The worker sees no page to take parts of the program from: it brings them along.
    const parts = {};
    for (const { id, textContent } of document.querySelectorAll("script[id$='.wasm']")) parts[id] = textContent;
    const whole = ["self.tankfulParts = ", JSON.stringify(parts), ";\n", code];
    globalThis.tankfulWorker = URL.createObjectURL(new Blob(whole, { type: "text/javascript" }));
    await __wbg_init({ module_or_path: bytesOf("wasm") });
  })().catch((error) => {
    console.error(error);
    document.getElementById("not-started").hidden = false;
  });
}
