//! Files, and where in them a value stands.
