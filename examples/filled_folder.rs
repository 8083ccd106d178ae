//! Fills a data folder of the app with invented visits, for measuring it full: VISITS of forty entries
//! each, four to a pair, all handed over but the last.
//!
//!     cargo run --release --example filled_folder DIR [VISITS=10000]

use std::error::Error;
use std::path::Path;

use feedside::app::clock::wall_now;
use feedside::record::{
    At, Entry, Hold, Label, Pair, PairId, Sex, Side, Visit, VisitId, WallTime, What,
};
use feedside::store::Store;
use feedside::store::vault::{Cost, Vault};
use uuid::Uuid;

const ENTRIES: u32 = 40;
const VISITS_A_PAIR: u128 = 4;
const HOUR_MS: i64 = 3_600_000;

fn pair(number: u128, birth: WallTime) -> Result<Pair, Box<dyn Error>> {
    Ok(Pair {
        id: PairId::of(Uuid::from_u128(number)),
        mother_id: None,
        bed: Label::new(&format!("Bed {number}"))?,
        initials: Label::new("Q. Z.")?,
        mother_number: None,
        baby_number: None,
        birth,
        sex: Sex::NotStated,
        gestation: None,
        birth_weight: None,
        way_of_birth: None,
        babies: 1,
        risk_notes: vec![],
        reasons: vec![],
        language: None,
    })
}

fn visit(number: u128, of: PairId, began: WallTime) -> Result<Visit, Box<dyn Error>> {
    let who = Label::new("feeding lead")?;
    let mut visit = Visit::new(VisitId::of(Uuid::from_u128(number)), of, began, who.clone());
    for seq in 1..=ENTRIES {
        let what = match seq {
            1 => What::FeedStarted {
                side: Side::Left,
                hold: Hold::Cradle,
            },
            ENTRIES => What::Signed { by: who.clone() },
            _ if seq % 3 == 0 => What::SuckSwallow,
            _ => What::Suck,
        };
        let at_ms = u64::from(seq) * 700;
        visit.journal.push(Entry {
            seq,
            at: At::ms(at_ms),
            wall: began.plus_ms(i64::from(seq) * 700),
            what,
            newer: None,
        })?;
    }
    Ok(visit)
}

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let folder = arguments.next().ok_or("name a folder")?;
    let visits: u128 = arguments.next().map_or(Ok(10_000), |it| it.parse())?;
    let folder = Path::new(&folder);
    std::fs::create_dir_all(folder)?;
    let vault = Vault::of(folder, Cost::USUAL)?;
    let key = vault.key_without_pin()?.ok_or("the folder has a PIN")?;
    let store = Store::open_locked(vault, &key)?;
    let now = wall_now();
    for number in 0..visits {
        let of = number / VISITS_A_PAIR;
        let pair = pair(of, now.plus_ms(-72 * HOUR_MS))?;
        if number % VISITS_A_PAIR == 0 {
            store.save_pair(&pair)?;
        }
        let hours_ago = i64::try_from(VISITS_A_PAIR - number % VISITS_A_PAIR)?;
        let visit = visit(number + 1, pair.id, now.plus_ms(-hours_ago * HOUR_MS))?;
        store.begin_visit(&visit)?;
    }
    Ok(())
}
