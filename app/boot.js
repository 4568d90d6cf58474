// Starts the program from the files that the page preloads. It is a file of its own because the
// content security policy forbids inline scripts.
const href = (selector) => document.querySelector(selector).href;
const { default: init } = await import(href('link[rel=modulepreload]'));
await init({ module_or_path: href('link[rel=preload][as=fetch]') });
performance.mark('running');
document.documentElement.dataset.ready = '1';
