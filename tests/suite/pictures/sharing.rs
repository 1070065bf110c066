//! The cache may be shared, deleted or spoiled at any moment, and the renditions come out the same.

use std::fs;
use std::panic::AssertUnwindSafe;
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};

use super::{Desk, text};
use bookmatch::pictures::{Cache, Renditions, Source, prepare};

const PHOTOS: usize = 8;
const WIDTHS: [u32; 3] = [200, 120, 60];

fn draw(desk: &Desk) {
    desk.python("for n in range(8): photo(300 + n, 200).save(f'{n}.jpg', quality=90)", &[]);
}

fn prepare_all(folder: &Path, cache: &Cache) -> Vec<Renditions> {
    let sources: Vec<Source<'_>> =
        (0..PHOTOS).map(|n| Source::file(n.to_string(), folder.join(format!("{n}.jpg")))).collect();
    let made = prepare(cache, &sources, &WIDTHS, &|_| ());
    made.into_iter().map(|made| made.unwrap_or_else(|fault| panic!("{fault}"))).collect()
}

/// The digests of all renditions, in order.
fn digests(made: &[Renditions]) -> Vec<String> {
    made.iter().flat_map(|made| &made.files).map(|file| file.digest.to_string()).collect()
}

fn all_whole(cache: &Cache, made: &[Renditions]) -> bool {
    made.iter().flat_map(|made| &made.files).all(|file| cache.rendition(file).is_some())
}

/// The digests expected, from a cache of its own.
fn expected(desk: &Desk) -> Vec<String> {
    digests(&prepare_all(desk.folder.path(), &Cache::temporary().expect("a temporary cache")))
}

#[test]
fn two_programs_at_once_share_a_cache() {
    const TOLD: &str = "BOOKMATCH_TEST_SHARED_FOLDER";
    if let Some(folder) = std::env::var_os(TOLD) {
        // This is one of the two, started below.
        let cache = Cache::open(&Path::new(&folder).join("cache")).expect("a cache");
        println!("made {}", digests(&prepare_all(Path::new(&folder), &cache)).join(" "));
        return;
    }
    let desk = Desk::new();
    draw(&desk);
    let name = format!("{}::two_programs_at_once_share_a_cache", module_path!().split_once("::").expect("a crate").1);
    let start = || {
        let mut command = Command::new(std::env::current_exe().expect("this program"));
        command.args(["--exact", &name, "--nocapture"]).env(TOLD, desk.folder.path());
        command.stdout(Stdio::piped()).spawn().expect("a second program")
    };
    let both = [start(), start()];
    let wanted = format!("made {}", expected(&desk).join(" "));
    for one in both {
        let output = one.wait_with_output().expect("its output");
        let told = String::from_utf8_lossy(&output.stdout).into_owned();
        assert!(output.status.success() && told.contains(&wanted), "{told}");
    }
    assert!(all_whole(&desk.cache, &prepare_all(desk.folder.path(), &desk.cache)));
    assert_eq!(left_over(desk.cache.folder()), [""; 0], "nothing unfinished is left");
}

/// How many files are there at this moment.
fn files_in(folder: &Path) -> usize {
    walkdir::WalkDir::new(folder).into_iter().flatten().filter(|entry| entry.file_type().is_file()).count()
}

/// Files that a write has left behind.
fn left_over(folder: &Path) -> Vec<String> {
    let files = walkdir::WalkDir::new(folder).into_iter().flatten();
    files.map(|file| text(file.path())).filter(|path| path.contains("unfinished")).collect()
}

#[test]
fn two_threads_at_once_share_a_cache() {
    let desk = Desk::new();
    draw(&desk);
    let wanted = expected(&desk);
    std::thread::scope(|scope| {
        for one in [0, 1].map(|_| scope.spawn(|| digests(&prepare_all(desk.folder.path(), &desk.cache)))) {
            assert_eq!(one.join().expect("no panic"), wanted);
        }
    });
}

#[test]
fn a_cache_deleted_again_and_again_while_photos_are_made_is_made_anew() {
    let desk = Desk::new();
    draw(&desk);
    let (wanted, done, times) = (expected(&desk), AtomicBool::new(false), AtomicU32::new(0));
    let made = std::thread::scope(|scope| {
        scope.spawn(|| {
            while !done.load(Ordering::SeqCst) {
                // Each time when another number of files is kept.
                let at = 1 + times.load(Ordering::SeqCst) as usize % 4;
                if files_in(desk.cache.folder()) < at {
                    std::thread::yield_now();
                    continue;
                }
                // A file that comes meanwhile keeps the folder itself from going: what was in it is gone.
                let _ = fs::remove_dir_all(desk.cache.folder());
                times.fetch_add(1, Ordering::SeqCst);
            }
        });
        let mut made = Vec::new();
        // On a busy machine the other thread gets its turn late.
        while made.len() < 6 || times.load(Ordering::SeqCst) < 4 && made.len() < 1000 {
            let one =
                std::panic::catch_unwind(AssertUnwindSafe(|| digests(&prepare_all(desk.folder.path(), &desk.cache))));
            done.store(one.is_err(), Ordering::SeqCst);
            made.push(one.expect("every photo made"));
        }
        done.store(true, Ordering::SeqCst);
        made
    });
    let times = times.into_inner();
    assert!(times > 3, "the folder was deleted {times} times");
    made.iter().for_each(|made| assert_eq!(*made, wanted));
    let made = prepare_all(desk.folder.path(), &desk.cache);
    assert!(all_whole(&desk.cache, &made));
}

#[test]
fn a_file_of_the_cache_altered_cut_emptied_or_replaced_is_noticed_and_made_anew() {
    let desk = Desk::new();
    draw(&desk);
    let wanted = expected(&desk);
    prepare_all(desk.folder.path(), &desk.cache);
    let files: Vec<_> = walkdir::WalkDir::new(desk.cache.folder())
        .into_iter()
        .flatten()
        .filter(|file| file.file_type().is_file() && file.file_name() != ".gitignore")
        .collect();
    assert_eq!(files.len(), PHOTOS + PHOTOS * WIDTHS.len());
    type Spoil = fn(&mut Vec<u8>);
    let spoils: [(&str, Spoil); 4] = [
        ("altered", |bytes| {
            let middle = bytes.len() / 2;
            bytes[middle] ^= 0x10;
        }),
        ("cut", |bytes| bytes.truncate(bytes.len() - 1)),
        ("emptied", Vec::clear),
        ("replaced", |bytes| *bytes = b"\xff\xd8\xff\xd9 some other file".to_vec()),
    ];
    for (how, spoil) in spoils {
        for file in &files {
            let mut bytes = fs::read(file.path()).expect("the entry");
            spoil(&mut bytes);
            fs::write(file.path(), bytes).expect("room");
        }
        let made = prepare_all(desk.folder.path(), &desk.cache);
        assert_eq!(digests(&made), wanted, "{how}");
        assert!(all_whole(&desk.cache, &made), "{how}");
    }
}

#[test]
fn half_a_cache_is_filled_up_again() {
    let desk = Desk::new();
    draw(&desk);
    let made = prepare_all(desk.folder.path(), &desk.cache);
    for file in made.iter().flat_map(|made| &made.files).step_by(2) {
        fs::remove_file(&file.path).expect("the rendition");
        assert_eq!(desk.cache.rendition(file), None);
    }
    assert_eq!(prepare_all(desk.folder.path(), &desk.cache), made);
    assert!(all_whole(&desk.cache, &made));
}

#[test]
fn other_widths_are_another_entry_and_leave_the_first_whole() {
    let desk = Desk::new();
    draw(&desk);
    let made = prepare_all(desk.folder.path(), &desk.cache);
    let other = desk.prepare("0.jpg", &[150]);
    assert_eq!(other.files.len(), 1);
    assert!(all_whole(&desk.cache, &made));
}
