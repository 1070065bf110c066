//! Numbers that look like chance, and are the same in every run.

/// A generator of numbers: splitmix64 (Steele, Lea and Flood 2014), a published mixing function; from memory.
pub struct Dice(u64);

impl Dice {
    /// Those of a history, by its number.
    pub fn of(number: u64) -> Self {
        let mut dice = Self(number.wrapping_mul(0x2545_F491_4F6C_DD1D));
        dice.next();
        dice
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// A number below another; 0 below 0.
    pub fn below(&mut self, end: usize) -> usize {
        usize::try_from(self.next() % (end.max(1) as u64)).unwrap_or_default()
    }

    /// Seconds from one number to another, both included.
    pub fn between(&mut self, first: i64, last: i64) -> i64 {
        let span = u64::try_from(last - first + 1).unwrap_or(1);
        first + i64::try_from(self.next() % span).unwrap_or_default()
    }

    /// Whether something happens that does so many times of a hundred.
    pub fn is(&mut self, of_a_hundred: usize) -> bool {
        self.below(100) < of_a_hundred
    }

    /// One of several.
    pub fn one<'a, T>(&mut self, of: &'a [T]) -> &'a T {
        &of[self.below(of.len())]
    }
}
