//! Imports go only down the table of rooms. One package has no walls between its rooms; this is
//! the wall.

use super::paths::named;
use super::source::{files, none, root, shown, text};

/// A room, the rooms it may use, and what it must not name.
struct Room {
    name: &'static str,
    may_use: &'static [&'static str],
    never: &'static [&'static [&'static str]],
}

const SQL: &[&str] = &["rusqlite"];
const SCREEN: &[&str] = &["slint", "slint_build", "i_slint_core"];
const FLUENT: &[&str] = &["fluent", "i18n_embed", "unic_langid"];
const WORDS_ALONE: &[&str] = &["rust_embed"];
const DISK: &[&str] = &["std::fs"];
const NET: &[&str] = &["std::net"];
const SURROUNDINGS: &[&str] = &["std::env", "std::process", "std::thread", "std::io::stdin"];
const CLOCK: &[&str] = &[
    "SystemTime",
    "Instant",
    "UNIX_EPOCH",
    "Utc::now",
    "Local::now",
    "chrono::Local",
];
const RANDOM: &[&str] = &[
    "getrandom",
    "rand::rng",
    "rand::random",
    "rand::make_rng",
    "thread_rng",
    "ThreadRng",
    "OsRng",
    "SysRng",
    "from_os_rng",
    "Uuid::new_v4",
    "Uuid::now_v7",
];
const DICE: &[&str] = &["rand", "rand_chacha", "rand_distr"];

/// The pure core: no screen, disk, net, clock or random of its own.
const CORE: &[&[&str]] = &[
    SQL,
    SCREEN,
    FLUENT,
    WORDS_ALONE,
    DISK,
    NET,
    SURROUNDINGS,
    CLOCK,
    RANDOM,
    DICE,
];

/// The table of rooms, lowest first. `rehearse` stands on top of all: it plays the whole job.
const ROOMS: &[Room] = &[
    Room {
        name: "record",
        may_use: &[],
        never: CORE,
    },
    Room {
        name: "rhythm",
        may_use: &["record"],
        never: CORE,
    },
    Room {
        name: "growth",
        may_use: &["record"],
        never: CORE,
    },
    Room {
        name: "findings",
        may_use: &["record", "rhythm", "growth"],
        never: CORE,
    },
    Room {
        name: "practice",
        may_use: &["record"],
        never: &[
            SQL,
            SCREEN,
            FLUENT,
            WORDS_ALONE,
            DISK,
            NET,
            SURROUNDINGS,
            CLOCK,
            RANDOM,
        ],
    },
    Room {
        name: "words",
        may_use: &[],
        never: &[SQL, SCREEN, DISK, NET, SURROUNDINGS, CLOCK, RANDOM, DICE],
    },
    Room {
        name: "store",
        may_use: &["record"],
        never: &[SCREEN, FLUENT, WORDS_ALONE, NET, DICE],
    },
    Room {
        name: "handover",
        may_use: &["record"],
        never: &[
            SQL,
            SCREEN,
            FLUENT,
            WORDS_ALONE,
            DISK,
            NET,
            SURROUNDINGS,
            CLOCK,
            RANDOM,
        ],
    },
    Room {
        name: "report",
        may_use: &["record", "rhythm", "growth", "findings", "words"],
        never: &[SQL, SCREEN, DISK, NET, SURROUNDINGS, CLOCK, RANDOM, DICE],
    },
    Room {
        name: "fault",
        may_use: &[
            "record", "rhythm", "growth", "findings", "practice", "words", "store", "handover",
            "report",
        ],
        never: &[SQL, SCREEN, DISK, NET, SURROUNDINGS, CLOCK, RANDOM, DICE],
    },
    Room {
        name: "app",
        may_use: &[
            "record", "rhythm", "growth", "findings", "practice", "words", "store", "handover",
            "report", "fault",
        ],
        never: &[SQL, FLUENT, NET],
    },
    Room {
        name: "desk",
        may_use: &[
            "record", "rhythm", "growth", "findings", "practice", "words", "store", "handover",
            "report", "fault",
        ],
        never: &[SCREEN, FLUENT, DICE],
    },
    Room {
        name: "clerk",
        may_use: &["record", "words", "handover", "report", "desk"],
        never: &[SQL, FLUENT, NET, DICE],
    },
    Room {
        name: "rehearse",
        may_use: &[
            "record", "rhythm", "growth", "findings", "practice", "words", "store", "handover",
            "report", "fault", "app", "desk",
        ],
        never: &[SQL, FLUENT, NET],
    },
];

/// The programs and the rooms they start. They hold arguments and exit codes, nothing else.
const PROGRAMS: &[(&str, &[&str])] = &[
    ("main.rs", &["app", "rehearse"]),
    ("bin/feedside-desk.rs", &["desk", "clerk"]),
];

fn module_of(path: &std::path::Path) -> Vec<String> {
    let inside = shown(path);
    let inside = inside.trim_start_matches("src/").trim_end_matches(".rs");
    inside
        .split('/')
        .filter(|part| *part != "mod")
        .map(str::to_owned)
        .collect()
}

fn rooms_named(name: &str) -> bool {
    ROOMS.iter().any(|room| room.name == name)
}

#[test]
fn rooms_import_only_downwards_and_name_nothing_that_is_not_theirs() {
    let mut faults = Vec::new();
    for room in ROOMS {
        for file in files(&format!("src/{}", room.name), &[".rs"]) {
            for it in named(&text(&file), &module_of(&file)) {
                let path = it.path.join("::");
                if let Some(other) = it.room()
                    && other != room.name
                    && rooms_named(other)
                    && !room.may_use.contains(&other)
                {
                    faults.push(format!("{} uses `{path}`", shown(&file)));
                }
                if room
                    .never
                    .iter()
                    .copied()
                    .flatten()
                    .any(|name| it.has(name))
                {
                    faults.push(format!("{} names `{path}`", shown(&file)));
                }
            }
        }
    }
    none(&faults);
}

#[test]
fn programs_start_their_room_and_use_no_other() {
    let mut faults = Vec::new();
    for (program, may_use) in PROGRAMS {
        let file = root().join("src").join(program);
        for it in named(&text(&file), &[]) {
            if let Some(room) = it.room()
                && rooms_named(room)
                && !may_use.contains(&room)
            {
                faults.push(format!("{program} uses `{}`", it.path.join("::")));
            }
        }
    }
    none(&faults);
}

#[test]
fn the_rooms_of_the_library_are_those_of_the_table_in_an_order_that_goes_up() {
    let file = syn::parse_file(&text(&root().join("src/lib.rs"))).unwrap();
    let rooms: Vec<_> = file
        .items
        .iter()
        .filter_map(|item| match item {
            syn::Item::Mod(it) => Some(it.ident.to_string()),
            _ => None,
        })
        .collect();
    let mut listed = rooms.clone();
    let mut table: Vec<_> = ROOMS.iter().map(|room| room.name.to_owned()).collect();
    listed.sort();
    table.sort();
    assert_eq!(listed, table);
    for (index, name) in rooms.iter().enumerate() {
        let room = ROOMS.iter().find(|room| room.name == name).unwrap();
        for lower in room.may_use {
            assert!(
                rooms[..index].iter().any(|it| it == lower),
                "{name} uses {lower}, which lib.rs names later"
            );
        }
    }
    for folder in std::fs::read_dir(root().join("src")).unwrap() {
        let folder = folder.unwrap().path();
        let name = folder.file_name().unwrap().to_string_lossy().into_owned();
        assert!(
            !folder.is_dir() || name == "bin" || rooms.contains(&name),
            "src/{name} is not a room"
        );
    }
}

/// The table itself must not let a room reach up, by whatever way round.
#[test]
fn no_room_of_the_table_can_come_back_to_itself() {
    for (index, room) in ROOMS.iter().enumerate() {
        for lower in room.may_use {
            let place = ROOMS.iter().position(|it| it.name == *lower).unwrap();
            assert!(place < index, "{} uses {lower}", room.name);
        }
    }
}
