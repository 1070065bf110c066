//! Ends a server from any thread, a signal handler's among them.

use std::sync::Arc;

use tokio::sync::watch::{Sender, channel};

/// A server ends once any copy of this is told [`Stop::now`].
#[derive(Debug, Clone)]
pub struct Stop(Arc<Sender<bool>>);

impl Default for Stop {
    fn default() -> Self {
        Self(Arc::new(channel(false).0))
    }
}

impl Stop {
    /// Ends the server soon.
    pub fn now(&self) {
        self.0.send_replace(true);
    }

    /// Waits until somebody wants the server to end.
    pub async fn asked(&self) {
        let mut asked = self.0.subscribe();
        // The sender lives as long as `self`, so this waits for the word and nothing else.
        let _ = asked.wait_for(|asked| *asked).await;
    }
}
