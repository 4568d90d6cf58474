// Starts the program from the files that the page preloads. It is a file of its own because the
// content security policy forbids inline scripts.
const href = (selector) => document.querySelector(selector).href;
const { default: init } = await import(href('link[rel=modulepreload]'));
const program = href('link[rel=preload][as=fetch]');
// The single file has the rest in common (tests/xtask/src/one_file.rs).
try {
  await init({ module_or_path: program });
} catch (error) {
  // The program tells its own faults; this is for when it does not come to life at all.
  if (!document.querySelector('[role=alert]')) {
    const told = document.createElement('p');
    told.setAttribute('role', 'alert');
    told.textContent = 'Leverwright could not be started in this browser. It needs WebAssembly: '
      + 'try a newer browser, or load the page again. Plans that were saved here are kept.';
    document.body.append(told);
  }
  throw error;
}
