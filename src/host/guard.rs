//! What every answer carries, and the other end of a connection.

use std::net::IpAddr;

use axum::http::{HeaderMap, HeaderName, HeaderValue, Response, header};

/// The address at the other end of the connection; put into each request by the socket's side.
#[derive(Clone, Copy, Debug)]
pub(super) struct Peer(pub(super) IpAddr);

/// What every answer carries.
const ALWAYS: [(&str, &str); 7] = [
    ("x-content-type-options", "nosniff"),
    ("x-frame-options", "DENY"),
    ("referrer-policy", "no-referrer"),
    ("cross-origin-opener-policy", "same-origin"),
    ("cross-origin-resource-policy", "same-origin"),
    ("permissions-policy", "camera=(), microphone=(), geolocation=(), payment=(), usb=(), interest-cohort=()"),
    ("x-robots-tag", "noindex, nofollow"),
];

/// Scripts, styles, pictures and fonts from here alone; nothing inline but styles in attributes, by which
/// drawings name their hatches; nobody may frame a page.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; \
                      img-src 'self' data:; font-src 'self'; manifest-src 'self'; object-src 'none'; \
                      base-uri 'none'; form-action 'none'; frame-ancestors 'none'; connect-src 'self'";

/// The headers of every answer; `post` is the address that pages send responses to, if it is elsewhere.
pub(super) fn headers(post: Option<&str>) -> HeaderMap {
    let mut headers = HeaderMap::new();
    for (name, value) in ALWAYS {
        headers.insert(HeaderName::from_static(name), HeaderValue::from_static(value));
    }
    let elsewhere = post.and_then(origin).map(|origin| format!(" {origin}")).unwrap_or_default();
    let policy = HeaderValue::from_str(&format!("{POLICY}{elsewhere}"));
    headers.insert(header::CONTENT_SECURITY_POLICY, policy.unwrap_or(HeaderValue::from_static(POLICY)));
    headers
}

/// Scheme, host and port of an address; nothing that could end the directive that it stands in.
fn origin(address: &str) -> Option<String> {
    let uri: axum::http::Uri = address.parse().ok()?;
    let (scheme, authority) = (uri.scheme_str()?, uri.authority()?);
    let plain = |letter: char| letter.is_ascii_alphanumeric() || ".-:[]".contains(letter);
    (matches!(scheme, "http" | "https") && authority.as_str().chars().all(plain))
        .then(|| format!("{scheme}://{authority}"))
}

/// Puts the headers of every answer on one.
pub(super) fn cover<B>(answer: &mut Response<B>, headers: &HeaderMap) {
    for (name, value) in headers {
        answer.headers_mut().insert(name, value.clone());
    }
    let usual = HeaderValue::from_static("no-store");
    answer.headers_mut().entry(header::CACHE_CONTROL).or_insert(usual);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn policy(post: Option<&str>) -> String {
        headers(post)[header::CONTENT_SECURITY_POLICY].to_str().unwrap().to_owned()
    }

    /// Published source: W3C, Content Security Policy Level 3, sections 6.1, 6.3 and 6.4 (directives).
    #[test]
    fn no_inline_script_may_run_and_nobody_may_frame() {
        let policy = policy(None);
        let directive = |name: &str| policy.split("; ").find(|part| part.split(' ').next() == Some(name)).unwrap();
        assert_eq!(directive("default-src"), "default-src 'none'");
        assert_eq!(directive("script-src"), "script-src 'self'");
        assert_eq!(directive("frame-ancestors"), "frame-ancestors 'none'");
        assert!(!policy.contains("unsafe-eval") && policy.matches("unsafe-inline").count() == 1, "{policy}");
    }

    #[test]
    fn the_books_own_address_may_be_posted_to_and_nothing_can_be_smuggled_in_with_it() {
        let own = policy(Some("https://answers.example:8443/in/responses?x=1"));
        assert!(own.ends_with("connect-src 'self' https://answers.example:8443"), "{own}");
        for odd in ["https://a.example;script-src *", "javascript:alert(1)", "https://u:p@a.example", "/responses"] {
            assert!(policy(Some(odd)).ends_with("connect-src 'self'"), "{odd}");
        }
    }
}
