//! The media types of published files.

/// The media type of a file by the ending of its name, as IANA registers it.
pub fn of(path: &str) -> &'static str {
    let name = path.rsplit('/').next().unwrap_or(path);
    match name.rsplit_once('.').map(|(_, ending)| ending) {
        Some("html") => "text/html; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("json") => "application/json",
        Some("svg") => "image/svg+xml",
        Some("jpg" | "jpeg") => "image/jpeg",
        Some("png") => "image/png",
        Some("webp") => "image/webp",
        Some("woff2") => "font/woff2",
        Some("pdf") => "application/pdf",
        Some("csv") => "text/csv; charset=utf-8",
        Some("ics") => "text/calendar; charset=utf-8",
        Some("txt") => "text/plain; charset=utf-8",
        Some("xlsx") => "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
        _ => "application/octet-stream",
    }
}

/// True for a file that is shown as a page.
pub fn is_page(path: &str) -> bool {
    path.ends_with(".html")
}

/// True for pictures, whose names hold their digest, and for fonts, which come with the program.
pub fn never_changes(path: &str) -> bool {
    path.contains("/pictures/") || path.contains("/assets/fonts/")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_media_type_follows_from_the_last_ending() {
        assert_eq!(of("client/sheet.pdf"), "application/pdf");
        assert_eq!(of("a.css/b"), "application/octet-stream");
        assert_eq!(of("a.b.svg"), "image/svg+xml");
    }
}
