//! A preview on a real folder and a real socket.
#![expect(clippy::disallowed_methods, reason = "the tests save files and take the time it takes")]

use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::sync::mpsc;
use std::time::Duration;

use tempfile::TempDir;

use super::*;

/// A preview at work; it is stopped and must end when this goes.
struct Running {
    folder: TempDir,
    address: SocketAddr,
    builds: Receiver<Changes>,
    stop: Stop,
    thread: Option<thread::JoinHandle<Result<(), PreviewError>>>,
}

/// The draft of these tests: the text of `book.yaml` on the cover; a tab in it breaks the book.
fn build(folder: &Path) -> Built {
    let text = fs::read_to_string(folder.join("book.yaml")).unwrap_or_default();
    if text.contains('\t') {
        return broken();
    }
    let cover = format!("<body>{text}</body>");
    built(&[("client/index.html", &cover), ("office/index.html", "<body></body>")])
}

/// What a build leaves to be made later, by the text of `book.yaml`.
type Leaves = Box<dyn FnMut(&str) -> Option<Later> + Send>;

impl Running {
    fn start() -> Self {
        Self::leaving(Box::new(|_| None))
    }

    fn leaving(mut leaves: Leaves) -> Self {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("book.yaml"), "title: Attic").unwrap();
        let (told, builds) = mpsc::channel();
        let (ready, serving) = mpsc::channel();
        let root = folder.path().to_path_buf();
        let (pending, begun) = mpsc::channel();
        let preview = Preview {
            folder: folder.path().into(),
            address: SocketAddr::from(([127, 0, 0, 1], 0)),
            build: Box::new(move |changes| {
                pending.send(changes.clone()).unwrap();
                let text = fs::read_to_string(root.join("book.yaml")).unwrap_or_default();
                Built { waiting: leaves(&text), ..build(&root) }
            }),
            // Told only once it is shown: a page that listens then hears of the next build first.
            tell: Box::new(move |news| match news {
                News::Serving(address) => ready.send(address).unwrap(),
                News::Built { .. } => told.send(begun.recv().unwrap()).unwrap(),
            }),
        };
        let stop = Stop::default();
        let thread = thread::spawn({
            let stop = stop.clone();
            move || run(preview, &stop)
        });
        let address = serving.recv_timeout(PATIENCE).unwrap();
        let running = Self { folder, address, builds, stop, thread: Some(thread) };
        assert!(running.built().unwrap().everything);
        running
    }

    fn save(&self, path: &str, text: &str) {
        fs::write(self.folder.path().join(path), text).unwrap();
    }

    /// The changes of the next build, if there is one soon.
    fn built(&self) -> Option<Changes> {
        self.builds.recv_timeout(PATIENCE).ok()
    }

    /// False, once something more was built: a page is looked for again.
    fn waits(&self) -> bool {
        let _ = self.built();
        false
    }

    fn get(&self, path: &str) -> TcpStream {
        let mut stream = TcpStream::connect(self.address).unwrap();
        stream.set_read_timeout(Some(PATIENCE)).unwrap();
        let request = format!("GET {path} HTTP/1.1\r\nHost: {}\r\nConnection: close\r\n\r\n", self.address);
        stream.write_all(request.as_bytes()).unwrap();
        stream
    }

    fn page(&self, path: &str) -> String {
        let mut answer = String::new();
        self.get(path).read_to_string(&mut answer).unwrap();
        answer
    }

    /// An open page's ear, already listening.
    fn listen(&self) -> BufReader<TcpStream> {
        let mut events = BufReader::new(self.get("/-/events"));
        next(&mut events, ": listening");
        events
    }
}

const PATIENCE: Duration = Duration::from_secs(5);

/// Reads on to a line that begins so.
fn next(events: &mut BufReader<TcpStream>, begin: &str) -> String {
    let mut line = String::new();
    while !line.starts_with(begin) {
        line.clear();
        assert_ne!(events.read_line(&mut line).unwrap(), 0, "ended before `{begin}`");
    }
    line
}

impl Drop for Running {
    fn drop(&mut self) {
        self.stop.now();
        let ended = self.thread.take().map(thread::JoinHandle::join);
        if !thread::panicking() {
            ended.unwrap().unwrap().unwrap();
        }
    }
}

#[test]
fn a_saved_file_is_built_shown_and_told_to_the_pages_it_changed() {
    let running = Running::start();
    let mut events = running.listen();
    assert!(running.page("/client/").contains("title: Attic"));
    running.save("book.yaml", "title: Cellar");
    let heard = next(&mut events, "data: ");
    assert!(heard.contains(r#""changed":["client/index.html"]"#), "{heard}");
    assert!(running.page("/client/").contains("title: Cellar"));
    let changes = running.built().unwrap();
    assert_eq!(changes.paths, ["book.yaml".into()].into());
}

/// Work that takes as long as the test wants: it says when it begins, and is told when to end.
struct Slow {
    begun: Receiver<()>,
    end: mpsc::Sender<()>,
    /// Whether each was left, once it ended.
    left: Receiver<bool>,
}

impl Slow {
    /// A preview whose builds leave slow work while `book.yaml` says so, and the hold on that work. A build
    /// that finds it done leaves none.
    fn start() -> (Running, Self) {
        let (begin, begun) = mpsc::channel();
        let (end, ends) = mpsc::channel();
        let (tell, left) = mpsc::channel();
        let (ends, done) = (Arc::new(std::sync::Mutex::new(ends)), Arc::new(std::sync::Mutex::new(String::new())));
        let leaves = move |text: &str| {
            if !text.contains("slow") || *done.lock().unwrap() == text {
                return None;
            }
            let (begin, ends, tell, done, text) =
                (begin.clone(), Arc::clone(&ends), tell.clone(), Arc::clone(&done), text.to_owned());
            Some(Box::new(move |left: &std::sync::atomic::AtomicBool| {
                begin.send(()).unwrap();
                ends.lock().unwrap().recv_timeout(PATIENCE).unwrap();
                let left = left.load(std::sync::atomic::Ordering::SeqCst);
                if !left {
                    *done.lock().unwrap() = text;
                }
                // The test may be over.
                let _ = tell.send(left);
            }) as Later)
        };
        (Running::leaving(Box::new(leaves)), Self { begun, end, left })
    }
}

#[test]
fn what_takes_long_is_made_when_the_folder_rests_shown_by_a_build_and_made_only_once() {
    let (running, slow) = Slow::start();
    running.save("book.yaml", "title: slow");
    assert_eq!(running.built().unwrap().paths.len(), 1);
    slow.begun.recv_timeout(PATIENCE).unwrap();
    slow.end.send(()).unwrap();
    assert!(!slow.left.recv_timeout(PATIENCE).unwrap());
    assert!(running.built().unwrap().is_empty());
    running.save("book.yaml", "title: Cellar");
    assert_eq!(running.built().unwrap().paths.len(), 1);
    assert!(slow.begun.try_recv().is_err());
}

#[test]
fn a_save_goes_before_what_takes_long_which_is_left_and_begun_again() {
    let (running, slow) = Slow::start();
    running.save("book.yaml", "title: slow");
    running.built().unwrap();
    slow.begun.recv_timeout(PATIENCE).unwrap();
    // It is at work and will not end by itself: the save is built and shown all the same.
    running.save("book.yaml", "title: slow cellar");
    assert_eq!(running.built().unwrap().paths, ["book.yaml".into()].into());
    assert!(running.page("/client/").contains("title: slow cellar"));
    assert!(slow.begun.try_recv().is_err(), "one at a time");
    slow.end.send(()).unwrap();
    assert!(slow.left.recv_timeout(PATIENCE).unwrap(), "it was told to leave off");
    // What was left is of no build; what the last one left is begun once the folder rests.
    slow.begun.recv_timeout(PATIENCE).unwrap();
    assert!(running.builds.try_recv().is_err());
    slow.end.send(()).unwrap();
    assert!(running.built().unwrap().is_empty());
}

/// As somebody saves who writes for a while: whenever what takes long has begun, the next save comes. None waits for
/// it, nothing half made is shown, and once the rhythm ends it is made all the same.
#[test]
fn in_a_steady_rhythm_every_save_is_shown_before_anything_that_takes_long() {
    let (running, slow) = Slow::start();
    let save = |n: u32| {
        running.save("book.yaml", &format!("title: slow {n}."));
        assert_eq!(running.built().unwrap().paths, ["book.yaml".into()].into(), "{n}");
        assert!(running.page("/client/").contains(&format!("title: slow {n}.")), "{n}");
    };
    save(0);
    for n in 1..=5 {
        slow.begun.recv_timeout(PATIENCE).unwrap();
        save(n);
        slow.end.send(()).unwrap();
        assert!(slow.left.recv_timeout(PATIENCE).unwrap(), "save {n} goes before it");
        assert!(running.builds.try_recv().is_err(), "what was left is of no build, {n}");
    }
    slow.begun.recv_timeout(PATIENCE).unwrap();
    slow.end.send(()).unwrap();
    assert!(!slow.left.recv_timeout(PATIENCE).unwrap(), "nothing keeps it from being made");
    assert!(running.built().unwrap().is_empty());
}

#[test]
fn a_folder_that_goes_and_is_laid_anew_at_its_path_is_followed() {
    let running = Running::start();
    let root = running.folder.path();
    for (n, aside) in [false, true, false].into_iter().enumerate() {
        if aside {
            fs::rename(root, root.with_extension("aside")).unwrap();
        } else {
            fs::remove_dir_all(root).unwrap();
        }
        // Perhaps seen to be gone, perhaps not: the builds till then do not matter.
        fs::create_dir(root).unwrap();
        running.save("book.yaml", &format!("title: Loft {n}"));
        let shown = |text: &str| (0..200).any(|_| running.page("/client/").contains(text) || running.waits());
        assert!(shown(&format!("title: Loft {n}")), "what was laid, {n}");
        running.save("book.yaml", &format!("title: Cellar {n}"));
        assert!(shown(&format!("title: Cellar {n}")), "a save after that, {n}");
        let _ = fs::remove_dir_all(root.with_extension("aside"));
    }
}

#[test]
fn a_broken_file_never_takes_the_last_good_page_away() {
    let running = Running::start();
    let mut events = running.listen();
    running.save("book.yaml", "title:\tCellar");
    let heard = next(&mut events, "data: ");
    assert!(heard.contains(r#""changed":[]"#) && heard.contains("a tab stands"), "{heard}");
    let page = running.page("/client/");
    assert!(page.contains("title: Attic") && page.contains("a tab stands"), "{page}");
    running.save("book.yaml", "title: Cellar");
    next(&mut events, "data: ");
    let page = running.page("/client/");
    assert!(page.contains("title: Cellar") && !page.contains("a tab stands"), "{page}");
}

#[test]
fn neither_a_read_nor_the_same_bytes_nor_the_cache_wakes_a_build() {
    let running = Running::start();
    fs::create_dir(running.folder.path().join(".bookmatch")).unwrap();
    running.save(".bookmatch/kept", "a picture");
    for n in 0..5 {
        running.save(".bookmatch/kept", &format!("a picture {n}"));
        running.save("book.yaml", "title: Attic");
        fs::read(running.folder.path().join("book.yaml")).unwrap();
        running.save("room.yaml", &format!("name: Attic {n}"));
        // Each build is for the last save alone: none comes before it, or in between.
        assert_eq!(running.built().unwrap().paths, ["room.yaml".into()].into());
    }
    assert!(running.builds.try_recv().is_err());
}

#[test]
fn a_new_folder_is_followed_too() {
    let running = Running::start();
    fs::create_dir_all(running.folder.path().join("rooms/attic")).unwrap();
    running.save("rooms/attic/room.yaml", "name: Attic");
    let room: PathBuf = "rooms/attic/room.yaml".into();
    assert!(running.built().unwrap().paths.contains(&room));
    running.save("rooms/attic/room.yaml", "name: Loft");
    assert_eq!(running.built().unwrap().paths, [room].into());
}

#[test]
fn an_editors_save_by_way_of_another_file_is_one_build() {
    let running = Running::start();
    running.save(".book.yaml.new", "title: Cellar");
    let at = |name: &str| running.folder.path().join(name);
    fs::rename(at("book.yaml"), at("book.yaml~")).unwrap();
    fs::rename(at(".book.yaml.new"), at("book.yaml")).unwrap();
    fs::remove_file(at("book.yaml~")).unwrap();
    assert_eq!(running.built().unwrap().paths, ["book.yaml".into()].into());
    // What is built next is for the next save: nothing more came of the first.
    running.save("room.yaml", "name: Attic");
    assert_eq!(running.built().unwrap().paths, ["room.yaml".into()].into());
}

#[test]
fn it_ends_although_a_page_is_open() {
    let running = Running::start();
    let mut events = running.listen();
    let address = running.address;
    // Its thread is waited for.
    drop(running);
    assert!(TcpStream::connect(address).is_err());
    let mut rest = String::new();
    events.read_to_string(&mut rest).unwrap();
}

#[test]
fn a_build_that_is_still_at_work_does_not_keep_the_preview_from_ending() {
    let folder = tempfile::tempdir().unwrap();
    let (stop, (going, started)) = (Stop::default(), mpsc::channel());
    let (goes_on, ends) = mpsc::channel::<()>();
    let preview = Preview {
        folder: folder.path().into(),
        address: SocketAddr::from(([127, 0, 0, 1], 0)),
        build: Box::new(move |_| {
            going.send(()).unwrap();
            // It goes on until the preview has ended.
            let _ = ends.recv();
            built(&[])
        }),
        tell: Box::new(|_| {}),
    };
    let (from, thread) = (stop.clone(), thread::spawn(move || run(preview, &stop)));
    started.recv_timeout(PATIENCE).unwrap();
    from.now();
    thread.join().unwrap().unwrap();
    drop(goes_on);
}

#[test]
fn a_build_that_panics_ends_the_preview() {
    let folder = tempfile::tempdir().unwrap();
    let preview = Preview {
        folder: folder.path().into(),
        address: SocketAddr::from(([127, 0, 0, 1], 0)),
        build: Box::new(|_| panic!("on purpose")),
        tell: Box::new(|_| {}),
    };
    assert!(matches!(run(preview, &Stop::default()), Err(PreviewError::Build)));
}

#[test]
fn it_serves_this_machine_alone_and_names_a_port_that_is_taken() {
    let preview = |address| Preview {
        folder: std::env::temp_dir(),
        address,
        build: Box::new(|_| built(&[])),
        tell: Box::new(|_| {}),
    };
    let open = SocketAddr::from(([0, 0, 0, 0], 0));
    let error = run(preview(open), &Stop::default()).unwrap_err();
    assert!(matches!(error, PreviewError::NotLoopback(_)));
    let taken = TcpListener::bind(("127.0.0.1", 0)).unwrap();
    let error = run(preview(taken.local_addr().unwrap()), &Stop::default()).unwrap_err();
    assert!(matches!(error, PreviewError::Listen(..)));
    assert!(!error.remedy().is_empty());
}

#[test]
fn each_saved_file_is_one_build_and_one_word_to_the_page() {
    let running = Running::start();
    let mut events = running.listen();
    for n in 0..15 {
        running.save("book.yaml", &format!("title: Attic {n}"));
        next(&mut events, "data: ");
        assert_eq!(running.built().unwrap().paths, ["book.yaml".into()].into(), "save {n}");
    }
    assert!(running.builds.try_recv().is_err());
}
