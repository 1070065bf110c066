//! What a cache keeps, what counts as absent, and what it never follows.

use super::*;

fn cache() -> Cache {
    Cache::temporary().unwrap()
}

#[test]
fn what_is_put_comes_back_and_may_be_replaced() {
    let (cache, key) = (cache(), Digest::of(b"key"));
    assert_eq!(cache.get("sheets", &key), None);
    for bytes in [&b"first"[..], b"", b"third, longer"] {
        cache.put("sheets", &key, bytes).unwrap();
        assert_eq!(cache.get("sheets", &key).as_deref(), Some(bytes));
    }
    assert_eq!(cache.get("other", &key), None);
}

#[test]
fn an_entry_altered_anywhere_or_cut_anywhere_counts_as_absent() {
    let (cache, key) = (cache(), Digest::of(b"key"));
    cache.put("sheets", &key, b"body").unwrap();
    let place = cache.folder().join(name("sheets", &key).unwrap());
    let whole = fs::read(&place).unwrap();
    for at in 0..whole.len() {
        fs::write(&place, &whole[..at]).unwrap();
        assert_eq!(cache.get("sheets", &key), None, "cut at {at}");
        let mut altered = whole.clone();
        altered[at] ^= 1;
        fs::write(&place, &altered).unwrap();
        assert_ne!(cache.get("sheets", &key).as_deref(), Some(&b"Body"[..]));
        if let Some(read) = cache.get("sheets", &key) {
            assert_eq!(read, b"body", "altered at {at}: only a blank may change");
        }
    }
    fs::write(&place, [&whole[..], b"more"].concat()).unwrap();
    assert_eq!(cache.get("sheets", &key), None);
}

#[test]
fn a_kind_that_would_leave_the_folder_keeps_nothing() {
    let (cache, key) = (cache(), Digest::of(b"key"));
    for kind in ["..", "a/b", "", "A", "renditions", "/tmp"] {
        assert!(cache.put(kind, &key, b"x").is_err(), "{kind}");
        assert_eq!(cache.get(kind, &key), None, "{kind}");
    }
}

#[test]
fn the_folder_is_hidden_from_version_control_and_comes_back_when_deleted() {
    let outer = tempfile::tempdir().unwrap();
    let folder = outer.path().join("book/.cache");
    let cache = Cache::open(&folder).unwrap();
    fs::remove_dir_all(&folder).unwrap();
    cache.put("sheets", &Digest::of(b"key"), b"body").unwrap();
    assert_eq!(fs::read_to_string(folder.join(".gitignore")).unwrap(), "*\n");
    assert!(cache.get("sheets", &Digest::of(b"key")).is_some());
}

#[test]
fn a_folder_that_cannot_be_made_is_named() {
    let outer = tempfile::tempdir().unwrap();
    let file = outer.path().join("taken");
    fs::write(&file, "a file").unwrap();
    let fault = Cache::open(&file.join("cache")).unwrap_err();
    assert!(fault.to_string().contains("taken/cache` can't be written"), "{fault}");
}

#[cfg(unix)]
#[test]
fn a_link_within_the_cache_or_on_the_way_to_it_is_not_followed() {
    for link in [".bookmatch", ".bookmatch/cache", ".bookmatch/cache/sheets"] {
        let (book, elsewhere) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
        let link = book.path().join(link);
        fs::create_dir_all(link.parent().unwrap()).unwrap();
        std::os::unix::fs::symlink(elsewhere.path(), &link).unwrap();
        let cache = Cache::of_book(book.path());
        cache.put("sheets", &Digest::of(b"key"), b"body").unwrap();
        let trouble = cache.trouble().unwrap();
        assert!(trouble.to_string().contains("is a link"), "{link:?}");
        assert!(
            trouble.remedy().text().starts_with(&format!("move `{}` away", link.display())),
            "{}",
            trouble.remedy()
        );
        assert_eq!(fs::read_dir(elsewhere.path()).unwrap().count(), 0, "{link:?}");
    }
}

/// What another book kept, or whoever laid the link wrote, is not published as this book's.
#[cfg(unix)]
#[test]
fn nothing_is_read_from_the_cache_through_a_link() {
    let other = tempfile::tempdir().unwrap();
    let (key, digest) = (Digest::of(b"key"), Digest::of(b"a picture"));
    let kept = Cache::of_book(other.path());
    kept.put("sheets", &key, b"another book's").unwrap();
    kept.put_rendition(&digest, b"a picture").unwrap();
    for links in
        [&[".bookmatch"][..], &[".bookmatch/cache"], &[".bookmatch/cache/sheets", ".bookmatch/cache/renditions"]]
    {
        let book = tempfile::tempdir().unwrap();
        for link in links {
            let place = book.path().join(link);
            fs::create_dir_all(place.parent().unwrap()).unwrap();
            std::os::unix::fs::symlink(other.path().join(link), &place).unwrap();
        }
        let cache = Cache::of_book(book.path());
        assert_eq!(cache.get("sheets", &key), None, "{links:?}");
        assert!(!cache.rendition_path(&digest).starts_with(other.path()), "{links:?}");
        cache.put("sheets", &key, b"own").unwrap();
        let made = cache.put_rendition(&digest, b"a picture").unwrap();
        assert_eq!(cache.get("sheets", &key).as_deref(), Some(&b"own"[..]), "{links:?}");
        assert_eq!(cache.rendition_path(&digest), made, "{links:?}");
    }
}

#[cfg(unix)]
#[test]
fn a_link_that_is_laid_after_the_cache_was_opened_is_not_followed() {
    let (book, elsewhere) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let cache = Cache::of_book(book.path());
    fs::remove_dir_all(book.path().join(".bookmatch")).unwrap();
    std::os::unix::fs::symlink(elsewhere.path(), book.path().join(".bookmatch")).unwrap();
    fs::create_dir_all(elsewhere.path().join("cache")).unwrap();
    cache.put("sheets", &Digest::of(b"key"), b"body").unwrap();
    assert_eq!(fs::read_dir(elsewhere.path().join("cache")).unwrap().count(), 0);
    assert!(cache.trouble().is_some());
}

/// The ways in which a folder can't be written to that hold for every user; permissions do not bind all.
#[test]
fn what_cannot_be_kept_in_the_folder_passes_and_the_remedy_names_what_stands_there() {
    for blocked in ["book", "book/.bookmatch", "book/.bookmatch/cache", "book/.bookmatch/cache/renditions"] {
        let outer = tempfile::tempdir().unwrap();
        let file = outer.path().join(blocked);
        fs::create_dir_all(file.parent().unwrap()).unwrap();
        fs::write(&file, "a file").unwrap();
        let cache = Cache::of_book(&outer.path().join("book"));
        let (digest, key) = (Digest::of(b"a picture"), Digest::of(b"key"));
        let kept = cache.put_rendition(&digest, b"a picture").unwrap();
        cache.put("sheets", &key, b"body").unwrap();
        assert_eq!(fs::read(&kept).unwrap(), b"a picture", "{blocked}");
        assert_eq!(cache.rendition_path(&digest), kept);
        assert_eq!(cache.clone().get("sheets", &key).as_deref(), Some(&b"body"[..]));
        let remedy = cache.trouble().unwrap().remedy();
        assert_eq!(
            remedy.text(),
            format!("move `{}` away: a folder of bookmatch's own is made in its place", file.display())
        );
        assert_eq!(fs::read(&file).unwrap(), b"a file");
        drop(cache);
        assert!(!kept.exists(), "it passes");
    }
}

#[test]
fn a_folder_that_can_be_written_to_is_no_trouble() {
    let outer = tempfile::tempdir().unwrap();
    let cache = Cache::of_book(outer.path());
    assert!(cache.put_rendition(&Digest::of(b"x"), b"x").unwrap().starts_with(outer.path()));
    assert!(cache.trouble().is_none());
}
