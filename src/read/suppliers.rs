//! Suppliers of whom something is known, and from whom nothing is bought: a name that is misspelt on one side leaves
//! what is bought there without its terms.

use std::collections::BTreeSet;

use crate::book::Book;
use crate::finding::{Code, Finding, Remark, phrase};
use crate::source::yaml::Value;
use crate::vocabulary::{is_plain, nearest, same_but_for_case};

use super::load::Loaded;

/// Tells of each supplier under `suppliers` that nothing names.
pub fn check(book: &Book, loaded: &Loaded, findings: &mut Vec<Finding>) {
    // What could not be read may name it.
    if book.project_unread || !book.unread.is_empty() {
        return;
    }
    let recorded: BTreeSet<&str> = book.project.suppliers.iter().map(|supplier| supplier.name.as_str()).collect();
    let named = named(book, loaded);
    let without = || named.iter().copied().filter(|name| !recorded.contains(name));
    for supplier in book.project.suppliers.iter().filter(|supplier| !named.contains(supplier.name.as_str())) {
        let name = supplier.name.as_str();
        let same = same_but_for_case(name, without());
        let message = phrase!("nothing in this book is bought from a supplier called `{name}`", name);
        let remark = match same.or_else(|| nearest(name, without())) {
            Some(near) => {
                let remedy = phrase!("did you mean `{near}`?", near);
                Remark::query(supplier.name.span, message).remedy(remedy)
            }
            None => Remark::note(supplier.name.span, message)
                .remedy("write it as `supplier` of what is bought there says it, or take it out"),
        };
        findings.push(remark.mended_by(same.filter(|same| is_plain(same))).of(Code::UNKNOWN_NAME));
    }
}

/// The suppliers that options and products name.
fn named<'a>(book: &'a Book, loaded: &'a Loaded) -> BTreeSet<&'a str> {
    let options = book.selections().flat_map(|(_, selection)| &selection.options);
    let of_options = options.map(|option| option.supplier.text().trim());
    let of_products = loaded.products.values().filter_map(|node| match &node.at("supplier")?.value {
        Value::Scalar { text, .. } => Some(text.trim()),
        _ => None,
    });
    of_options.chain(of_products).filter(|name| !name.is_empty()).collect()
}
