//! Whom a request is counted by: the other end of the connection or, where that is a proxy of our own, whom the
//! proxy names.
//!
//! Each proxy adds the address that it was asked from at the end of what came with the request, so that only the
//! last names are our own proxies' word and all before them may be a stranger's. From the end on, names of our own
//! proxies are passed over: the first that is none of them is the sender. One header alone is believed, the one
//! that the proxy is said to write: another could have come through it as a stranger wrote it.

use std::fmt;
use std::net::{IpAddr, SocketAddr};
use std::str::FromStr;

use axum::http::{HeaderMap, HeaderName, header};

/// An address, or all that begin with the same bits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Network {
    address: IpAddr,
    bits: u8,
}

/// What was written is no address, and no network.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NoNetwork(String);

impl fmt::Display for NoNetwork {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "`{}` is no address; write one such as `127.0.0.1`, or a network such as `10.1.0.0/16`",
            self.0.escape_debug()
        )
    }
}

impl std::error::Error for NoNetwork {}

impl FromStr for Network {
    type Err = NoNetwork;

    /// An address, or a network as RFC 4632 (section 3.1) and RFC 4291 (section 2.3) write it.
    fn from_str(text: &str) -> Result<Self, NoNetwork> {
        let wrong = || NoNetwork(text.into());
        let (address, bits) = match text.split_once('/') {
            Some((address, bits)) if bits.bytes().all(|digit| digit.is_ascii_digit()) => (address, Some(bits)),
            Some(_) => return Err(wrong()),
            None => (text, None),
        };
        let address: IpAddr = address.parse().map_err(|_| wrong())?;
        let all = if address.is_ipv4() { 32 } else { 128 };
        let bits: u8 = bits.map_or(Ok(all), str::parse).map_err(|_| wrong())?;
        match address.to_canonical() {
            // An address of IPv4 that is written as one of IPv6.
            four @ IpAddr::V4(_) if bits == all => Ok(Self { address: four, bits: 32 }),
            _ if bits > all => Err(wrong()),
            _ => Ok(Self { address, bits }),
        }
    }
}

impl Network {
    fn holds(&self, address: IpAddr) -> bool {
        let same = |one: u128, other: u128, all: u32| {
            let rest = all.saturating_sub(u32::from(self.bits));
            (one ^ other).checked_shr(rest).unwrap_or(0) == 0
        };
        match (self.address, address) {
            (IpAddr::V4(one), IpAddr::V4(other)) => same(one.to_bits().into(), other.to_bits().into(), 32),
            (IpAddr::V6(one), IpAddr::V6(other)) => same(one.to_bits(), other.to_bits(), 128),
            _ => false,
        }
    }
}

/// The header in which proxies say where a request comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ProxyHeader {
    /// `X-Forwarded-For`, as most proxies write it.
    #[default]
    XForwardedFor,
    /// `Forwarded` (RFC 7239).
    Forwarded,
}

/// The proxies of our own.
#[derive(Clone, Debug, Default)]
pub struct Proxies {
    /// Where they are.
    pub trusted: Vec<Network>,
    /// What they write.
    pub header: ProxyHeader,
}

impl Proxies {
    /// Whether an address is one of them.
    pub(super) fn trusts(&self, address: IpAddr) -> bool {
        let address = address.to_canonical();
        self.trusted.iter().any(|network| network.holds(address))
    }

    /// Whom a request is counted by, that came over a connection from `peer`.
    pub(super) fn sender(&self, peer: IpAddr, headers: &HeaderMap) -> IpAddr {
        let mut sender = peer.to_canonical();
        if !self.trusts(sender) {
            return sender;
        }
        for named in self.header.named(headers).into_iter().rev() {
            // Where a proxy names nobody, the proxy is all that is known.
            let Some(named) = named else { return sender };
            sender = named;
            if !self.trusts(sender) {
                return sender;
            }
        }
        sender
    }
}

impl ProxyHeader {
    const fn name(self) -> HeaderName {
        match self {
            Self::XForwardedFor => HeaderName::from_static("x-forwarded-for"),
            Self::Forwarded => header::FORWARDED,
        }
    }

    /// Whom the lines of the header name, in their order; nothing for what is no address.
    fn named(self, headers: &HeaderMap) -> Vec<Option<IpAddr>> {
        let mut all = Vec::new();
        for line in headers.get_all(self.name()) {
            match (line.to_str(), self) {
                (Err(_), _) => all.push(None),
                (Ok(line), Self::XForwardedFor) => all.extend(line.split(',').map(|one| address(one.trim()))),
                // A line that is not of the form is one that nobody can know the parts of.
                (Ok(line), Self::Forwarded) => all.extend(forwarded(line).unwrap_or_else(|| vec![None])),
            }
        }
        all
    }
}

/// The address that a node is, with or without its port: `192.0.2.43`, `192.0.2.43:47011`, `[2001:db8::17]:4711`.
fn address(node: &str) -> Option<IpAddr> {
    let bare = node.strip_prefix('[').and_then(|rest| rest.strip_suffix(']')).unwrap_or(node);
    let whole = bare.parse().ok();
    whole.or_else(|| node.parse::<SocketAddr>().ok().map(|socket| socket.ip())).map(|address| address.to_canonical())
}

/// Whom each element of a line of `Forwarded` names (RFC 7239, section 4); nothing where the line is not of the form.
fn forwarded(line: &str) -> Option<Vec<Option<IpAddr>>> {
    let mut all = Vec::new();
    let mut rest = line;
    loop {
        let mut of_element = None;
        loop {
            let (name, after) = token(rest.trim_start_matches([' ', '\t']));
            let (value, after) = value(after.strip_prefix('=')?)?;
            if name.eq_ignore_ascii_case("for") {
                of_element = address(&value);
            }
            rest = after.trim_start_matches([' ', '\t']);
            match rest.strip_prefix(';') {
                Some(after) => rest = after,
                None => break,
            }
        }
        all.push(of_element);
        match rest.strip_prefix(',') {
            Some(after) => rest = after,
            None => return rest.is_empty().then_some(all),
        }
    }
}

/// A token at the start of a text (RFC 9110, section 5.6.2), and what follows it.
fn token(text: &str) -> (&str, &str) {
    let is_part = |letter: char| letter.is_ascii_alphanumeric() || "!#$%&'*+-.^_`|~".contains(letter);
    let end = text.find(|letter| !is_part(letter)).unwrap_or(text.len());
    text.split_at_checked(end).unwrap_or((text, ""))
}

/// A token or a quoted text (RFC 9110, section 5.6.4), and what follows it.
fn value(text: &str) -> Option<(String, &str)> {
    let Some(quoted) = text.strip_prefix('"') else {
        let (token, after) = token(text);
        return (!token.is_empty()).then(|| (token.to_owned(), after));
    };
    let mut value = String::new();
    let mut letters = quoted.chars();
    while let Some(letter) = letters.next() {
        match letter {
            '"' => return Some((value, letters.as_str())),
            '\\' => value.push(letters.next()?),
            other => value.push(other),
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    fn behind(trusted: &str, header: ProxyHeader) -> Proxies {
        Proxies { trusted: trusted.split(' ').map(|one| one.parse().unwrap()).collect(), header }
    }

    /// Who is counted for a request from a peer with some lines of a header.
    fn counted(proxies: &Proxies, peer: &str, lines: &[(&str, &str)]) -> String {
        let mut headers = HeaderMap::new();
        for (name, line) in lines {
            headers.append(name.parse::<HeaderName>().unwrap(), line.parse().unwrap());
        }
        proxies.sender(peer.parse().unwrap(), &headers).to_string()
    }

    #[test]
    fn only_a_proxy_of_our_own_is_believed() {
        let written = [("x-forwarded-for", "203.0.113.7"), ("forwarded", "for=203.0.113.7")];
        assert_eq!(counted(&Proxies::default(), "192.0.2.1", &written), "192.0.2.1");
        for header in [ProxyHeader::XForwardedFor, ProxyHeader::Forwarded] {
            let proxies = behind("10.0.0.9", header);
            assert_eq!(counted(&proxies, "192.0.2.1", &written), "192.0.2.1", "a stranger who writes the header");
            assert_eq!(counted(&proxies, "10.0.0.9", &written), "203.0.113.7");
            assert_eq!(counted(&proxies, "::ffff:10.0.0.9", &written), "203.0.113.7", "the same address, mapped");
            assert_eq!(counted(&proxies, "10.0.0.9", &[]), "10.0.0.9");
        }
    }

    #[test]
    fn what_a_stranger_wrote_before_the_proxys_own_word_counts_for_nothing() {
        let proxies = behind("127.0.0.1 10.1.0.0/16", ProxyHeader::XForwardedFor);
        let of = |line: &str| counted(&proxies, "127.0.0.1", &[("x-forwarded-for", line)]);
        assert_eq!(of("198.51.100.1, 203.0.113.7"), "203.0.113.7");
        assert_eq!(of("198.51.100.1, 203.0.113.7, 10.1.2.3, 10.1.9.9"), "203.0.113.7", "two proxies more");
        assert_eq!(
            of("198.51.100.1, 10.1.9.9, 203.0.113.7"),
            "203.0.113.7",
            "who names one of our proxies is a stranger"
        );
        assert_eq!(of("10.1.0.7"), "10.1.0.7", "a proxy that asks for itself");
        assert_eq!(of("198.51.100.1, nobody"), "127.0.0.1", "what is no address is the proxy's");
        assert_eq!(of("198.51.100.1, nobody, 10.1.2.3"), "10.1.2.3");
        assert_eq!(of("203.0.113.7:47011"), "203.0.113.7", "with a port");
        assert_eq!(of("[2001:db8::7]:47011"), "2001:db8::7");
        let lines = [("x-forwarded-for", "198.51.100.1"), ("x-forwarded-for", "203.0.113.7")];
        assert_eq!(counted(&proxies, "127.0.0.1", &lines), "203.0.113.7", "the last of several lines");
        let other = [("forwarded", "for=198.51.100.1"), ("x-forwarded-for", "203.0.113.7")];
        assert_eq!(counted(&proxies, "127.0.0.1", &other), "203.0.113.7", "the header that it does not write");
        assert_eq!(counted(&proxies, "127.0.0.1", &other[..1]), "127.0.0.1");
    }

    /// Published source: RFC 7239, the examples of sections 4, 6.3, 7.1 and 7.4, each as the last proxy's word.
    #[test]
    fn the_examples_of_rfc_7239_are_read() {
        let proxies = behind("203.0.113.43", ProxyHeader::Forwarded);
        let of = |line: &str| counted(&proxies, "203.0.113.43", &[("forwarded", line)]);
        for (line, sender) in [
            ("for=\"_gazonk\"", "203.0.113.43"),
            ("For=\"[2001:db8:cafe::17]:4711\"", "2001:db8:cafe::17"),
            ("for=192.0.2.60;proto=http;by=203.0.113.43", "192.0.2.60"),
            ("for=192.0.2.43, for=198.51.100.17", "198.51.100.17"),
            ("for=_hidden, for=_SEVKISEK", "203.0.113.43"),
            ("for=192.0.2.43,for=\"[2001:db8:cafe::17]\",for=unknown", "203.0.113.43"),
            ("for=192.0.2.43, for=\"[2001:db8:cafe::17]\"", "2001:db8:cafe::17"),
        ] {
            assert_eq!(of(line), sender, "{line}");
        }
        // Section 7.1: one header in several lines is the same as in one.
        let lines = [("forwarded", "for=192.0.2.43"), ("forwarded", "for=\"[2001:db8:cafe::17]\", for=203.0.113.43")];
        assert_eq!(counted(&proxies, "203.0.113.43", &lines), "2001:db8:cafe::17");
    }

    /// A stranger who leaves a quotation open, so that the proxy's own word would be read as part of it.
    #[test]
    fn a_line_that_is_not_of_the_form_names_nobody() {
        let proxies = behind("127.0.0.1", ProxyHeader::Forwarded);
        for line in [
            "for=198.51.100.1;by=\", for=203.0.113.7",
            "for=198.51.100.1, for=\"x, for=\"[2001:db8::7]:80\"",
            "for=198.51.100.1;by=\", for=203.0.113.7;by=\"x\"",
            "for=198.51.100.1 for=203.0.113.7",
            "for=198.51.100.1,",
            "for=",
            "",
        ] {
            assert_eq!(counted(&proxies, "127.0.0.1", &[("forwarded", line)]), "127.0.0.1", "{line}");
        }
        let escaped = "for=\"203.0.113.\\7\"; proto=https";
        assert_eq!(counted(&proxies, "127.0.0.1", &[("forwarded", escaped)]), "203.0.113.7");
    }

    /// Published source: RFC 4632, section 3.1 (prefixes of IPv4), RFC 4291, section 2.3 (of IPv6).
    #[test]
    fn a_network_holds_the_addresses_that_begin_as_it_does() {
        let holds = |network: &str, address: &str| {
            network.parse::<Network>().unwrap().holds(address.parse::<IpAddr>().unwrap().to_canonical())
        };
        for (network, inside, outside) in [
            ("172.16.0.0/12", "172.31.255.255", "172.32.0.0"),
            ("192.0.2.7", "192.0.2.7", "192.0.2.6"),
            ("2001:db8:0:cd30::/60", "2001:db8:0:cd3f::1", "2001:db8:0:cd40::1"),
            ("::1", "::1", "::2"),
            ("0.0.0.0/0", "255.1.2.3", "::1"),
        ] {
            assert!(holds(network, inside) && !holds(network, outside), "{network}");
        }
        assert!(holds("::ffff:192.0.2.7", "192.0.2.7"));
        for odd in ["", "proxy", "10.0.0.0/33", "::/129", "10.0.0.0/", "10.0.0/8", "10.0.0.0/+8", "10.0.0.1:80"] {
            assert!(odd.parse::<Network>().is_err(), "{odd}");
        }
    }
}
