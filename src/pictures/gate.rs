//! Shares memory out among decoders: each says beforehand what it needs and waits for its turn.

use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};

/// Lets decoders in while their needs together stay within a budget.
pub(super) struct Gate {
    budget: u64,
    used: Mutex<u64>,
    freed: Condvar,
}

/// Memory spoken for until this is dropped.
pub(super) struct Share<'a> {
    gate: &'a Gate,
    bytes: u64,
}

impl Gate {
    pub(super) fn new(budget: u64) -> Gate {
        Gate { budget, used: Mutex::new(0), freed: Condvar::new() }
    }

    /// Waits until `bytes` are free; a need past the whole budget waits until it is alone.
    pub(super) fn enter(&self, bytes: u64) -> Share<'_> {
        let mut used = self.lock();
        while *used > 0 && used.saturating_add(bytes) > self.budget {
            used = self.freed.wait(used).unwrap_or_else(PoisonError::into_inner);
        }
        *used = used.saturating_add(bytes);
        Share { gate: self, bytes }
    }

    fn lock(&self) -> MutexGuard<'_, u64> {
        self.used.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Drop for Share<'_> {
    fn drop(&mut self) {
        let mut used = self.gate.lock();
        *used = used.saturating_sub(self.bytes);
        self.gate.freed.notify_all();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::atomic::{AtomicU64, Ordering};

    #[test]
    fn together_they_never_pass_the_budget_and_a_giant_goes_alone() {
        let gate = Gate::new(100);
        let (now, most) = (AtomicU64::new(0), AtomicU64::new(0));
        std::thread::scope(|scope| {
            for need in [60, 30, 500, 40, 40, 70, 10, 500] {
                let (gate, now, most) = (&gate, &now, &most);
                scope.spawn(move || {
                    let _share = gate.enter(need);
                    let sum = now.fetch_add(need, Ordering::SeqCst) + need;
                    assert!(sum <= 100 || sum == 500, "{sum} at once");
                    most.fetch_max(sum, Ordering::SeqCst);
                    std::thread::yield_now();
                    now.fetch_sub(need, Ordering::SeqCst);
                });
            }
        });
        assert_eq!(most.into_inner(), 500);
    }
}
