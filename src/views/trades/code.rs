//! The code to scan on a trade's sheet: to its own page, with the mark and the issue of the paper that it stands on.

use crate::drawings::scan::ScanCode;
use crate::views::pages::PageBuilder;
use crate::views::shared::html::Html;
use crate::views::shared::sheet::{CodeToScan, Sheet};

impl PageBuilder<'_> {
    /// The sheet with its code, where the book says where it is published. A draft is not built from and has none.
    pub fn with_code(&self, sheet: Sheet) -> Sheet {
        let code = self.code_of(&sheet);
        Sheet { code, ..sheet }
    }

    fn code_of(&self, sheet: &Sheet) -> Option<CodeToScan> {
        let site = self.subject.book.project.published_at.get().filter(|_| !self.subject.draft)?;
        let mark = sheet.mark.as_ref()?.replace(' ', "");
        let issue = sheet.project.issued.as_ref().map_or(String::new(), |issued| format!("-{}", issued.issue));
        let (site, prefix, path) = (site.trim_end_matches('/'), &self.prefix, &sheet.path);
        let address = format!("{site}/installer/{prefix}{path}#paper-{mark}{issue}");
        let svg = ScanCode::of(&address)?.svg(" aria-hidden=\"true\"");
        Some(CodeToScan { address, svg: Html::trusted(svg) })
    }
}
