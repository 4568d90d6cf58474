//! Measures the program inside the browser.

use super::Browser;
use crate::number::quantile;
use serde_json::json;

impl Browser {
    /// Makes the processor this many times slower: 1 is full speed.
    #[track_caller]
    pub fn slow_down(&self, times: f64) {
        self.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": times }));
    }

    /// How long a piece of work takes that is always the same, in ms: tells how much slower the
    /// processor really is made.
    #[track_caller]
    pub fn time_of_work(&self) -> f64 {
        let times: Vec<f64> = self.eval_later(
            "const done = arguments[arguments.length - 1];
             const work = () => {
                 const start = performance.now();
                 let x = 0;
                 for (let i = 0; i < 4e6; i += 1) x = (Math.imul(x, 31) + i) | 0;
                 return performance.now() - start + (x === 1 ? 1 : 0);
             };
             // Until it is compiled for good.
             for (let i = 0; i < 100; i += 1) work();
             const times = [];
             const next = () => {
                 times.push(work());
                 times.length < 30 ? setTimeout(next, 20) : done(times);
             };
             next();",
        );
        quantile(&times, 0.5)
    }

    /// What the program holds in memory after the garbage is gone, in bytes: objects, and the
    /// memory of the compiled program.
    #[track_caller]
    pub fn heap_bytes(&self) -> f64 {
        self.cdp("HeapProfiler.collectGarbage", json!({}));
        let usage = self.cdp("Runtime.getHeapUsage", json!({}));
        ["usedSize", "embedderHeapUsedSize", "backingStorageSize"]
            .iter()
            .filter_map(|part| usage[part].as_f64())
            .sum()
    }

    /// From now on and until the page is left, times each event of this type, such as
    /// `pointerup`: from the input itself until what it changed is painted.
    #[track_caller]
    pub fn time_paints_after(&self, event: &str) {
        // A message posted from a frame's callback arrives when that frame is painted.
        self.eval_with::<()>(
            "window.paintTimes = [];
             const painted = new MessageChannel();
             let since;
             painted.port1.onmessage = () => paintTimes.push(performance.now() - since);
             const post = () => painted.port2.postMessage(null);
             addEventListener(arguments[0], (event) => {
                 since = event.timeStamp;
                 requestAnimationFrame(post);
             }, { capture: true });",
            vec![json!(event)],
        );
    }

    /// The times so far, in ms, as soon as there are this many.
    #[track_caller]
    pub fn paint_times(&self, count: usize) -> Vec<f64> {
        self.wait_for(&format!("{count} events are painted"), || {
            self.eval::<usize>("return paintTimes.length") >= count
        });
        self.eval("return paintTimes")
    }
}
