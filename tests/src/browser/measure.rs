//! Measures the program inside the browser.

use super::Browser;
use serde_json::json;

impl Browser {
    /// Makes the processor this many times slower: 1 is full speed.
    #[track_caller]
    pub fn slow_down(&self, times: f64) {
        self.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": times }));
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
             addEventListener(arguments[0], (event) => requestAnimationFrame(() => {
                 const painted = new MessageChannel();
                 painted.port1.onmessage = () => paintTimes.push(performance.now() - event.timeStamp);
                 painted.port2.postMessage(null);
             }), { capture: true });",
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
