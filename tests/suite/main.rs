//! Tests of the whole program, from outside.

mod sheets;
