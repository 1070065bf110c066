//! Which `Host` a request may name: a page elsewhere must not read the draft through a name of its own.

use std::net::SocketAddr;

use axum::http::{HeaderMap, Uri, header};

/// True when the request names this machine, by address or as `localhost`, and the right port.
///
/// A foreign name that is made to point at a loopback address still arrives here with that name
/// in `Host` (RFC 9110, section 7.2), and is refused by it.
pub(super) fn is_ours(address: SocketAddr, headers: &HeaderMap, uri: &Uri) -> bool {
    let mut hosts = headers.get_all(header::HOST).iter();
    let (Some(host), None) = (hosts.next(), hosts.next()) else {
        return false;
    };
    let named = uri.authority().map(axum::http::uri::Authority::as_str);
    let ours = |host: &str| {
        let port = address.port();
        let names = [address.ip().to_string(), "127.0.0.1".into(), "localhost".into()];
        let six = ["[::1]".to_owned(), format!("[{}]", address.ip())];
        names.iter().chain(&six).any(|name| {
            let with_port = format!("{name}:{port}");
            host.eq_ignore_ascii_case(&with_port) || (port == 80 && host.eq_ignore_ascii_case(name))
        })
    };
    host.to_str().is_ok_and(ours) && named.is_none_or(ours)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn allowed(port: u16, hosts: &[&str]) -> bool {
        let mut headers = HeaderMap::new();
        for host in hosts {
            headers.append(header::HOST, host.parse().unwrap());
        }
        is_ours(SocketAddr::from(([127, 0, 0, 1], port)), &headers, &Uri::from_static("/"))
    }

    #[test]
    fn this_machine_may_be_named_in_three_ways() {
        for host in ["127.0.0.1:8123", "localhost:8123", "LocalHost:8123", "[::1]:8123"] {
            assert!(allowed(8123, &[host]), "{host}");
        }
        assert!(allowed(80, &["localhost"]));
    }

    #[test]
    fn any_other_name_or_port_is_refused() {
        for host in [
            "elsewhere.invalid:8123",
            "127.0.0.1.elsewhere.invalid:8123",
            "localhost.elsewhere.invalid:8123",
            "localhost",
            "localhost:80",
            "localhost:81234",
            "user@localhost:8123",
            "127.0.0.1",
            "",
        ] {
            assert!(!allowed(8123, &[host]), "{host}");
        }
        assert!(!allowed(8123, &[]));
        assert!(!allowed(8123, &["localhost:8123", "localhost:8123"]));
    }

    #[test]
    fn a_request_line_with_another_name_is_refused() {
        let mut headers = HeaderMap::new();
        headers.append(header::HOST, "localhost:8123".parse().unwrap());
        let address = SocketAddr::from(([127, 0, 0, 1], 8123));
        let elsewhere = Uri::from_static("http://elsewhere.invalid:8123/");
        assert!(!is_ours(address, &headers, &elsewhere));
    }
}
