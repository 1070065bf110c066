//! Quantities that can't be mixed up: lengths, areas, money, percentages, dates and lead times.
