//! What each page says, worded and formatted, as plain structs.

pub mod sign_off;
