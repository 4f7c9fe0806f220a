// The page's Web Worker. Its first message brings the page's own compiled WebAssembly and the address of
// its glue, so that nothing is downloaded twice. From then on the Rust side (src/worker) listens.
self.onmessage = async ({ data }) => {
  self.onmessage = null;
  try {
    const glue = await import(data.glue);
    glue.initSync({ module: data.module });
  } catch (error) {
    self.postMessage(String(error));
  }
};
