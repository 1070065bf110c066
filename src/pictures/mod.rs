//! Photographs at the sizes that pages ask for, kept between runs.
