//! The path that a request asks for.

/// A request's path with its `%` escapes resolved (RFC 3986, section 2.1); nothing when it is not UTF-8.
pub fn decoded(path: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(path.len());
    let mut rest = path.as_bytes();
    while let Some((&first, after)) = rest.split_first() {
        if first == b'%' {
            let (digits, after) = after.split_at_checked(2)?;
            let digits = std::str::from_utf8(digits).ok()?;
            let plain = digits.bytes().all(|digit| digit.is_ascii_hexdigit());
            bytes.push(plain.then(|| u8::from_str_radix(digits, 16).ok())??);
            rest = after;
        } else {
            bytes.push(first);
            rest = after;
        }
    }
    String::from_utf8(bytes).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 3986, section 2.1: a percent sign and two hex digits.
    #[test]
    fn escapes_are_resolved_and_anything_else_is_no_path() {
        assert_eq!(decoded("/a%20b%C2%BD/%2e%2E").as_deref(), Some("/a b½/.."));
        for faulty in ["/%ff", "/%+1", "/%2", "/%zz"] {
            assert_eq!(decoded(faulty), None, "{faulty}");
        }
    }
}
