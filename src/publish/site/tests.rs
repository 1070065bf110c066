//! Every page of the made-up books, as HTML.

use super::*;
use crate::views::client::cover::Cover;
use crate::views::pages::ClientPages;
use crate::views::samples;
use std::path::{Component, Path};

fn rendered(site: &Pages) -> BTreeMap<String, String> {
    let files = made(site, &Theme::standard().unwrap(), &mut PageCache::default());
    files.into_iter().filter_map(|(path, content)| Some((path, text(content)?))).collect()
}

/// All of a site as one portion.
fn made(site: &Pages, theme: &Theme, kept: &mut PageCache) -> BTreeMap<String, Content> {
    let whole: Portion<'_> = Box::new(|| site.clone());
    let issued = site.client.cover.as_ref().and_then(|cover| cover.sheet.project.issued.as_ref());
    render(&[whole], issued, theme, &Spool::default(), kept).unwrap()
}

fn text(content: Content) -> Option<String> {
    let Content::Bytes(bytes) = content else { return None };
    String::from_utf8(bytes.to_vec()).ok()
}

fn cover(site: &mut Pages) -> &mut Cover {
    site.client.cover.as_mut().unwrap()
}

/// Values of an attribute, in the order of the page.
fn values<'a>(html: &'a str, attribute: &'a str) -> impl Iterator<Item = &'a str> {
    let mark = format!(" {attribute}=\"");
    html.split(mark.as_str().to_owned().leak() as &str).skip(1).filter_map(|rest| rest.split('"').next())
}

/// The path that a link leads to from a page, by the rules of RFC 3986 for relative paths.
fn target(page: &str, href: &str) -> Option<String> {
    let mut parts: Vec<_> = Path::new(page).parent()?.components().collect();
    for part in Path::new(href).components() {
        match part {
            Component::ParentDir => drop(parts.pop()?),
            part => parts.push(part),
        }
    }
    let parts: Vec<_> = parts.iter().map(|part| part.as_os_str().to_string_lossy()).collect();
    Some(parts.join("/"))
}

#[test]
fn a_page_a_view_stands_in_its_folder() {
    let files = rendered(&samples::full());
    for path in [
        "client/index.html",
        "client/rooms/kitchen.html",
        "client/items/kitchen-refrigerator-3.html",
        "client/sign.html",
        "client/assets/book.css",
        "client/assets/print.css",
        "client/assets/cautions.css",
        "installer/assets/cautions.css",
        "office/assets/cautions.css",
        "installer/index.html",
        "installer/openings/kitchen-refrigerator.html",
        "office/index.html",
        "office/schedules/appliance.html",
        "office/orders.html",
        "office/money.html",
        "office/review.html",
        "office/rules.html",
        "office/assets/margins/schedules--appliance.css",
    ] {
        assert!(files.contains_key(path), "{path} is missing");
    }
}

#[test]
fn the_look_of_cautions_is_a_file_of_its_own_and_the_last_that_a_page_links() {
    let files = rendered(&samples::full());
    for (path, html) in files.iter().filter(|(path, _)| path.ends_with(".html")) {
        let head = html.split("</head>").next().unwrap();
        let last = head.rsplit("<link ").next().unwrap();
        assert!(last.starts_with("rel=\"stylesheet\"") && last.contains("assets/cautions.css\""), "{path}: {last}");
    }
    let others = files.iter().filter(|(path, _)| path.ends_with(".css") && !path.ends_with("/cautions.css"));
    for (path, style) in others {
        assert!(!style.contains("#older.caution"), "{path}");
    }
}

#[test]
fn a_book_with_next_to_nothing_in_it_is_still_a_book() {
    let files = rendered(&samples::bare());
    assert!(files["client/index.html"].contains("No hay nada pendiente"));
    assert!(files["installer/index.html"].contains("Todavía no hay huecos"));
    assert!(files["office/review.html"].contains("no encontró nada"));
}

/// A page without the addresses of makers' own sheets, which are told in full, and followed by who taps them alone.
fn without_makers_addresses(page: &str, html: &str) -> String {
    let (mut rest, mut left) = (html, String::new());
    while let Some((before, address)) = rest.split_once("<a class=\"address\" href=\"https://") {
        assert!(!page.starts_with("client/"), "{page} leads a client to a maker");
        let (address, after) = address.split_once("</a>").expect("a link has an end");
        assert!(address.contains("rel=\"external noopener noreferrer\""), "{page}: {address}");
        left += before;
        rest = after;
    }
    left + rest
}

#[test]
fn every_link_stays_in_its_folder_and_leads_to_a_file() {
    for site in [samples::full(), samples::bare()] {
        let files = rendered(&site);
        for (page, html) in files.iter().filter(|(path, _)| path.ends_with(".html")) {
            let folder = page.split('/').next().unwrap();
            let html = without_makers_addresses(page, html);
            for href in values(&html, "href").chain(values(&html, "src")) {
                let path = href.split('#').next().unwrap();
                let calls = path.starts_with("tel:");
                if path.is_empty() || path == "data:," || path.contains("pictures/") || calls {
                    continue;
                }
                let target = target(page, path).unwrap();
                assert!(target.starts_with(&format!("{folder}/")), "{page} leaves its folder by {href}");
                let is_there = files.contains_key(&target)
                    // The cover of this book stands for pages that it does not have.
                    || target.ends_with("index.html");
                assert!(is_there, "{page} links to {href}, which is not there");
            }
        }
    }
}

#[test]
fn every_script_is_a_file_or_data_and_no_style_is_inline() {
    for (page, html) in rendered(&samples::full()).iter().filter(|(path, _)| path.ends_with(".html")) {
        for script in html.split("<script").skip(1) {
            let file = script.starts_with(" defer src=\"") && script.contains("\"></script>");
            assert!(file || script.starts_with(" type=\"application/json\" id=\""), "{page} has `{script:.60}`");
        }
        let html = without_makers_addresses(page, html);
        for forbidden in [" style=", "<style", " onclick=", "javascript:", "http://", "https://"] {
            assert!(!html.contains(forbidden), "{page} has `{forbidden}`");
        }
    }
}

#[test]
fn a_draft_says_so_on_every_page_and_an_issue_does_not() {
    let mut site = samples::full();
    for (page, html) in rendered(&site).iter().filter(|(path, _)| path.ends_with(".html")) {
        assert!(html.contains("class=\"watermark\""), "{page} on paper");
        assert!(html.contains("class=\"draft\""), "{page} on a screen");
    }
    cover(&mut site).sheet.project.draft = false;
    let cover = &rendered(&site)["client/index.html"];
    assert!(!cover.contains("Draft"), "an issued cover is no draft");
}

#[test]
fn a_name_with_marks_of_html_and_css_is_only_a_name() {
    let mut site = samples::full();
    cover(&mut site).sheet.project.title = "</title><b>\"A\\B\"".into();
    let files = rendered(&site);
    assert!(!files["client/index.html"].contains("<b>\"A"));
    assert!(files["client/assets/margins/index.css"].contains("\\3c /title>\\3c b>\\22 A\\5c B\\22 "));
}

#[test]
fn pictures_reserve_their_space_and_all_but_the_first_wait_to_be_seen() {
    for (page, html) in rendered(&samples::full()).iter().filter(|(path, _)| path.ends_with(".html")) {
        for picture in html.split("<img ").skip(1).map(|rest| rest.split('>').next().unwrap()) {
            for wanted in ["width=\"", "height=\"", "alt=\"", "srcset=\""] {
                assert!(picture.contains(wanted), "{page}: {picture}");
            }
            assert!(picture.contains("loading=\"lazy\"") != picture.contains("fetchpriority"), "{page}: {picture}");
        }
    }
}

#[test]
fn the_same_views_make_the_same_bytes() {
    let theme = Theme::standard().unwrap();
    let once = || made(&samples::full(), &theme, &mut PageCache::default());
    assert_eq!(once(), once());
}

#[test]
fn pages_that_were_kept_are_those_that_would_be_made() {
    let theme = Theme::standard().unwrap();
    let mut kept = PageCache::default();
    let mut site = samples::full();
    made(&site, &theme, &mut kept);
    cover(&mut site).sheet.project.title = "Another Court".into();
    site.client.rooms.pop();
    let again = made(&site, &theme, &mut kept);
    assert_eq!(again, made(&site, &theme, &mut PageCache::default()));
    assert!(text(again["client/index.html"].clone()).unwrap().contains("Another Court"));
    site.edition.language = Language::named("es").unwrap();
    assert_eq!(made(&site, &theme, &mut kept), made(&site, &theme, &mut PageCache::default()));
}

/// Most that a page weighs on a screen without its photographs: HTML with its data, styles, and the fonts
/// that it needs. What it can be read without has a limit of its own.
const LIGHT: usize = 126_000;

#[test]
fn a_page_without_its_photographs_stays_light() {
    let theme = Theme::standard().unwrap();
    let font = |name: &str| theme.assets()[&format!("assets/fonts/{name}.woff2")].len();
    let fonts: usize = ["literata-text", "literata-display", "barlow-500", "barlow-600"].map(font).iter().sum();
    let common = fonts + theme.assets()["assets/book.css"].len() + theme.assets()["assets/cautions.css"].len();
    for (page, html) in rendered(&samples::full()).iter().filter(|(path, _)| path.ends_with(".html")) {
        // Only a page with notes in the designer's voice fetches the italic.
        let italic = if html.contains("class=\"prose\"") { font("literata-italic") } else { 0 };
        let weight = common + italic + html.len();
        assert!(weight < LIGHT, "{page} weighs {weight} bytes");
    }
}

/// Most that scripts and their style add to a page; nothing waits for them.
const ACTS: usize = 44_000;

#[test]
fn what_scripts_add_to_a_page_stays_light() {
    let theme = Theme::standard().unwrap();
    for script in ["assets/deciding.js", "assets/readings.js"] {
        let weight = theme.assets()[script].len() + theme.assets()["assets/act.css"].len();
        assert!(weight < ACTS, "{script} and its style weigh {weight} bytes");
    }
}

#[test]
fn a_site_told_page_by_page_is_the_one_told_whole() {
    let (theme, site) = (Theme::standard().unwrap(), samples::full());
    let edition = || site.edition.clone();
    let of_client = |client: ClientPages| Pages { edition: edition(), client, ..Pages::default() };
    let rest = ClientPages { rooms: vec![], items: vec![], ..site.client.clone() };
    let mut portions: Vec<Portion<'_>> = vec![];
    let (rooms, items) = (site.client.rooms.clone(), site.client.items.clone());
    portions.extend(items.into_iter().map(|item| -> Portion<'_> {
        Box::new(move || of_client(ClientPages { items: vec![item.clone()], ..ClientPages::default() }))
    }));
    portions.push(Box::new(move || of_client(ClientPages { rooms: rooms.clone(), ..ClientPages::default() })));
    portions.push(Box::new(|| Pages { client: rest.clone(), ..site.clone() }));
    let issued = site.client.cover.as_ref().and_then(|cover| cover.sheet.project.issued.as_ref());
    let in_pieces = render(&portions, issued, &theme, &Spool::aside(), &mut PageCache::default()).unwrap();
    let whole = made(&site, &theme, &mut PageCache::default());
    let digests = |files: &BTreeMap<String, Content>| -> Vec<(String, Digest)> {
        files.iter().map(|(path, content)| (path.clone(), content.digest())).collect()
    };
    assert_eq!(digests(&in_pieces), digests(&whole));
    // What stands in every folder is held once; all else lies aside.
    let in_memory = in_pieces.iter().filter(|(_, content)| matches!(content, Content::Bytes(_)));
    assert!(in_memory.into_iter().all(|(path, _)| !path.ends_with(".html") && !path.contains("/margins/")));
}
