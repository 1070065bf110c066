//! Where responses go.

use crate::source::yaml::Node;
use crate::units::phrase;
use crate::vocabulary::{Code, Faults, FieldType, Slot, Value, Way, record};

record! {
    group
    #[derive(Default)]
    pub struct Responses = RESPONSES("responses", "where decisions and readings are handed over; a file can always be saved, whatever stands here") {
        post: Slot<String> = "post",
            "the address that pages send them to",
            "https://book.example/responses" as WebAddress;
        email: Slot<String> = "email",
            "where to write instead; the firm's own, unless another is named",
            "office@pennick.example" as MailAddress;
    }
}

/// An address that a page can send to.
pub enum WebAddress {}

impl Way for WebAddress {
    type Of = String;
    const TYPE: FieldType = FieldType::Text;

    fn read(node: &Node, faults: &mut Faults) -> Option<String> {
        post(node, faults)
    }
}

/// An address at which pages are found.
pub enum SiteAddress {}

impl Way for SiteAddress {
    type Of = String;
    const TYPE: FieldType = FieldType::Text;

    fn read(node: &Node, faults: &mut Faults) -> Option<String> {
        site(node, faults)
    }
}

/// An address that one can write to.
pub enum MailAddress {}

impl Way for MailAddress {
    type Of = String;
    const TYPE: FieldType = FieldType::Text;

    fn read(node: &Node, faults: &mut Faults) -> Option<String> {
        email(node, faults)
    }
}

/// Whether an address is whole, and names nobody: a name and a password would stand on every page that is published.
fn is_whole(address: &str) -> bool {
    let rest = address.strip_prefix("https://").or_else(|| address.strip_prefix("http://"));
    let host = rest.and_then(|rest| rest.split('/').next()).unwrap_or_default();
    !(host.is_empty() || host.contains('@') || address.contains(|letter: char| letter.is_whitespace()))
}

fn site(node: &Node, faults: &mut Faults) -> Option<String> {
    let address = String::read(node, faults)?;
    if !is_whole(&address) || address.contains(['?', '#']) {
        let message = phrase!("`{address}` is no address that pages are found at", address);
        let remedy = "write the whole address of the published folder, such as `https://book.example/alder-court`";
        faults.stop(Code::WRONG_TYPE, node.span, message, remedy);
        return None;
    }
    Some(address)
}

fn post(node: &Node, faults: &mut Faults) -> Option<String> {
    let address = String::read(node, faults)?;
    if !is_whole(&address) {
        let message = phrase!("`{address}` is no address that a page can send to", address);
        let remedy = "write the whole address without a name or password, such as `https://book.example/responses`";
        faults.stop(Code::WRONG_TYPE, node.span, message, remedy);
        return None;
    }
    Some(address)
}

fn email(node: &Node, faults: &mut Faults) -> Option<String> {
    let address = String::read(node, faults)?;
    let parts = address.split_once('@').filter(|(name, host)| !name.is_empty() && !host.is_empty());
    let plain = |letter: char| letter.is_ascii_alphanumeric() || "@.-_+".contains(letter);
    if parts.is_none() || !address.chars().all(plain) {
        let message = phrase!("`{address}` is no address to write to", address);
        faults.stop(Code::WRONG_TYPE, node.span, message, "write one address, such as `office@pennick.example`");
        return None;
    }
    Some(address)
}
