//! Every number that the model stands on, with unit and source, but one: that runs and rests count one and
//! a half times is `evidence`'s, as a root. No arithmetic.
//!
//! They are where a feed starts from; `own` moves the rates, the swallowing, the misses, the runs
//! and the rests towards what the feed itself shows.

/// The three phases that sucks lie in, as indices: quick, flow, flutter.
pub(super) const QUICK: usize = 0;
/// See [`QUICK`].
pub(super) const FLOW: usize = 1;
/// See [`QUICK`].
pub(super) const FLUTTER: usize = 2;
/// How many sucking phases there are.
pub(super) const PHASES: usize = 3;

/// Two taps closer than this are one jaw movement, tapped twice, in milliseconds. Sucks at the
/// breast come about 560 ms apart (Hartmann, McClellan and others 2011, FASEB J 25 suppl 589.1) and
/// a hand follows a beat down to about 100 to 120 ms (Repp 2005, Psychon Bull Rev 12:969, from
/// memory); the value between is common practice.
pub const DOUBLED_MS: u64 = 150;

/// A swallow alone belongs to the suck before it if it comes no later than this, in milliseconds.
/// Common practice.
pub(super) const SWALLOW_LATE_MS: u64 = 1_500;

/// A rest is a gap of more than so many of the feed's usual gaps. A gap of two missed taps is
/// three usual gaps, and stays in its run; common practice.
pub const REST_GAPS: f64 = 3.4;
/// A gap of no more than this is never a rest, in milliseconds. A pause is a gap of more than 2 s
/// (from memory, the usual definition in work on nutritive sucking).
pub const REST_MS_FLOOR: u64 = 2_000;
/// A gap of more than this is always a rest, in milliseconds. Common practice.
pub const REST_MS_CEILING: u64 = 4_000;

/// The usual gap before a feed has shown its own, in milliseconds: between 560 (107 a minute) and
/// 667 (90 a minute), Hartmann and others 2011.
pub(super) const USUAL_GAP_MS: u64 = 610;
/// How many gaps that starting value is worth.
pub(super) const USUAL_GAP_WEIGHT: u32 = 8;

/// Mean gap between sucks within a run, in milliseconds. Quick and flow: 107 and 90 sucks a minute
/// (Hartmann and others 2011). Flutter: the rate rises late in a feed (Drewett and Woolridge 1979,
/// Early Hum Dev 3:315, from memory, direction only).
pub(super) const GAP_MS: [f64; PHASES] = [60_000.0 / 107.0, 60_000.0 / 90.0, 60_000.0 / 115.0];
/// How much babies differ in rate, one standard deviation of the logarithm. Common practice.
pub(super) const GAP_BABY_SPREAD: f64 = 0.22;
/// How much a phase's rate departs from what the baby's quick sucks say, likewise. Wider for
/// flow: teaching figures from bottle and pacifier work are 2 against 1 a second (Wolff 1968,
/// Pediatrics 42:943, from memory).
pub(super) const GAP_PHASE_SPREAD: [f64; PHASES] = [0.05, 0.0536, 0.1];
/// Spread of the gaps within a run about their mean, relative, a hand's unsteadiness included:
/// 30 to 60 ms a tap (Repp 2005, from memory) is 8 to 14 % of a gap, and the jaw's own adds to that.
/// Where a feed starts from is at the low end: it soon shows its own.
pub(super) const GAP_SPREAD: f64 = 0.101;
/// That spread by phase, against the feed's own: sucks come more regularly as milk flows (Geddes 2009,
/// Int Breastfeed J 4:5, table 2, direction only) and less so at the sleepy end (common practice).
pub(super) const GAP_SPREAD_BY: [f64; PHASES] = [1.0, 1.0, 1.25];
/// How many gaps of a phase that is worth. Many: a phase that may spread as it likes draws in what fits
/// no other.
pub(super) const GAP_SPREAD_BY_WEIGHT: f64 = 1_000.0;
/// How many gaps the feed's own spread is worth to start from.
pub(super) const GAP_SPREAD_WEIGHT: f64 = 20.0;
/// Live, how much of the rate's evidence is taken: gaps of a run that has a pace of its own repeat each
/// other's. So much of a phase's gaps also shows its mean, live and looking back. Common practice.
pub(super) const RATE_WEIGHT: f64 = 0.45;
/// Looking back, the same while it is not known how far the paces of runs spread, and after that: nearly
/// all, as the model is not the baby. Common practice.
pub(super) const RATE_WEIGHT_FIRST: f64 = 0.7;
/// See [`RATE_WEIGHT_FIRST`].
pub(super) const RATE_WEIGHT_PACED: f64 = 0.9;
/// How far the paces of runs may spread, one standard deviation of the logarithm: not at all in some
/// babies, as far as a phase's rate differs from another's in others. No published figure; common practice.
pub(super) const PACE_SPREADS: [f64; 5] = [0.0, 0.025, 0.05, 0.08, 0.12];
/// How much less plausible each of these is than the one before, as a logarithm. Common practice.
pub(super) const PACE_PLAUSIBLE: f64 = 1.0;
/// The share of the variance of gaps that is the hand's: 30 to 60 ms a tap (Repp 2005, from memory) are
/// 0.3 to 0.8 of it, where the jaw departs by 6 to 10 % (common practice).
pub(super) const HAND_SHARE: f64 = 0.5;
/// How many gaps that is worth.
pub(super) const HAND_SHARE_WEIGHT: f64 = 28.0;
/// No more than this is the hand's.
pub(super) const HAND_SHARE_MOST: f64 = 0.95;
/// A gap that fits nothing: its share, spread evenly up to [`REST_MS_CEILING`].
pub(super) const ODD_GAP_SHARE: f64 = 0.01;

/// Share of sucks that carry a swallow that was noticed. 2.5 sucks a swallow in flow, 6.7 before
/// it (Hartmann and others 2011); about one swallow in eight goes unnoticed (common practice, no
/// published figure). Flutter is taken below quick sucks (common practice).
pub(super) const SWALLOW: [f64; PHASES] = [
    SWALLOW_NOTICED / 6.7,
    SWALLOW_NOTICED / 2.5,
    SWALLOW_NOTICED / 10.8,
];
/// Share of swallows that are noticed.
pub(super) const SWALLOW_NOTICED: f64 = 0.88;
/// How much babies differ in swallowing, one standard deviation of the log odds: the ranges 1.3
/// to 8.7 and 2.5 to 23 of Hartmann and others 2011, read as plus and minus two, are 0.4. Taken smaller
/// (common practice): the phases share it, and a wide one lets a feed be read as another baby's.
pub(super) const SWALLOW_BABY_SPREAD: f64 = 0.27;
/// How much a phase's swallowing departs from what the baby's quick sucks say, likewise.
pub(super) const SWALLOW_PHASE_SPREAD: [f64; PHASES] = [0.05, 0.12, 0.25];

/// How much more readily a suck carries a swallow as a flow begins, in its middle and as it ends, as odds
/// against those of the flow: sucks a swallow vary within a feed with the flow of milk (Geddes and others
/// 2021, Nutrients, summary), and the milk of one ejection spends itself. The values are common practice.
pub(super) const FLOW_EBB_ODDS: [f64; FLOW_STAGES] = [1.28, 1.0, 0.78];
/// In so many stages a flow passes.
pub(super) const FLOW_STAGES: usize = 3;

/// Share of sucks that the hand misses: 0 to 15 % (common practice, no published figure).
pub(super) const MISSED: f64 = 0.07;
/// How many sucks that starting value is worth.
pub(super) const MISSED_WEIGHT: f64 = 60.0;

/// Chance that a rest follows a suck. About 10 sucks a run before the milk flows (Martens and
/// others 2020, pacifier, 3 months: 9.60); longer runs in flow (Wolff 1968) and shorter ones late
/// in a feed (Drewett and Woolridge 1979), both from memory.
pub(super) const REST_CHANCE: [f64; PHASES] = [1.0 / 9.0, 1.0 / 17.0, 1.0 / 4.3];
/// How much babies differ in the length of runs, one standard deviation of the log odds. Common
/// practice.
pub(super) const REST_CHANCE_BABY_SPREAD: f64 = 0.245;
/// How far the phases follow the baby's own length of runs and of rests: flutter is short runs and
/// long rests in any baby. Common practice.
pub(super) const REST_FOLLOWS: [f64; PHASES] = [1.0, 1.0, 0.597];
/// How much a phase's runs depart from what the baby's quick sucks say, likewise.
pub(super) const REST_CHANCE_PHASE_SPREAD: [f64; PHASES] = [0.078, 0.13, 0.2];
/// Median rest, in milliseconds: 3 to 9 s (from Martens and others 2020), longer late in a feed.
pub(super) const REST_MS: [f64; PHASES] = [5_800.0, 3_700.0, 8_500.0];
/// How much babies differ in rests, one standard deviation of the logarithm. Common practice.
pub(super) const REST_MS_BABY_SPREAD: f64 = 0.18;
/// How much a phase's rests depart from what the baby's quick sucks say, likewise.
pub(super) const REST_MS_PHASE_SPREAD: [f64; PHASES] = [0.05, 0.45, 0.27];
/// Spread of rests, one standard deviation of the logarithm: "interburst variation high" (Hack and
/// others 1985, Early Hum Dev 11:133); the value is common practice.
pub(super) const REST_SPREAD: f64 = 0.97;
/// How many rests that starting value is worth.
pub(super) const REST_SPREAD_WEIGHT: f64 = 5.0;

/// How much of the difference in fit between two readings of a feed is taken: less than all, as
/// the model is not the baby. Common practice.
pub(super) const READINGS_WEIGHT: f64 = 0.48;

/// Looking back, a suck's phase is told less surely than the model is of it, which is not the baby: its
/// probabilities are taken to this power. On simulated feeds they then are about as often right as they
/// say (`DEVELOPERS.md`). Common practice.
pub(super) const SURE: f64 = 0.6;

/// Share of feeds that begin with milk at once. Common practice.
pub(super) const FLOWS_AT_ONCE: f64 = 0.0224;
/// Mean time to the first flow, in milliseconds (Kent and others 2003, J Hum Lact 19:179, from
/// memory: about 56 s), for most feeds.
pub(super) const FIRST_FLOW_MS: f64 = 60_000.0;
/// Share of feeds where it comes late or never, and their mean time to it, in milliseconds.
/// Common practice.
pub(super) const LATE_FLOW_SHARE: f64 = 0.12;
/// See [`LATE_FLOW_SHARE`].
pub(super) const LATE_FLOW_MS: f64 = 630_000.0;
/// Mean length of one flow, in milliseconds: 45 s to 3.5 min (Gardner and others 2015, BMC
/// Pregnancy Childbirth 15:156).
pub(super) const FLOW_MS: f64 = 120_000.0;
/// Chance that quick sucks follow a flow, and not flutter at once: the milk slackens before the baby
/// tires of asking for more. Common practice.
pub(super) const QUICK_AFTER_FLOW: f64 = 0.81;
/// Mean time of quick sucks after a flow, in milliseconds, where the next flow is near. Common
/// practice.
pub(super) const BETWEEN_FLOWS_MS: f64 = 130_000.0;
/// Share of times after a flow where quick sucks go on for long, and their mean, in milliseconds:
/// 2.5 ejections of about 2 minutes in a feed of 16 minutes leave minutes between them.
pub(super) const LONG_BETWEEN_SHARE: f64 = 0.78;
/// See [`LONG_BETWEEN_SHARE`].
pub(super) const LONG_BETWEEN_MS: f64 = 290_000.0;
/// Chance that another flow follows quick sucks, and not flutter: 2.5 ejections a feed (Ramsay and
/// others 2004, Pediatrics 113:361), so that three in five flows are followed by another.
pub(super) const FLOW_AGAIN: f64 = 0.772;
/// Chance that a feed goes from its first quick sucks to flutter with no flow. Common practice.
pub(super) const NO_FLOW: f64 = 0.101;
/// Chance that flutter to the end, where it ends after all, and a drowsy while are followed by flow at
/// once, and not by quick sucks. Common practice.
pub(super) const WAKES_TO_FLOW: f64 = 0.55;
/// See [`WAKES_TO_FLOW`].
pub(super) const ROUSED_TO_FLOW: f64 = 0.15;
/// Mean time in flutter before the milk flows again, in milliseconds: hardly ever, as flutter is
/// the sleepy end. Common practice.
pub(super) const FLUTTER_MS: f64 = 3_100_000.0;
/// Share of flutters that are a drowsy while after which the baby wakes up, and their mean, in
/// milliseconds. Common practice. Small, as late quick sucks are else taken for such a while.
pub(super) const DROWSY_SHARE: f64 = 0.0139;
/// See [`DROWSY_SHARE`].
pub(super) const DROWSY_MS: f64 = 90_000.0;
/// Looking back, the odds of flutter in the parts of a feed, against those above: it is the sleepy
/// end. Common practice.
pub(super) const FLUTTER_ODDS: [f64; 3] = [0.5, 1.2, 1.3];
/// The shares of a feed at which its second and its third part begin.
pub(super) const FLUTTER_PARTS: [f64; 2] = [0.35, 0.55];
/// A baby that falls asleep early: the odds of flutter in any part of the feed, against those above.
/// Common practice.
pub(super) const EARLY_FLUTTER_ODDS: f64 = 2.2;
/// How plausible such a baby is, and one that dozes, beside one that flutters at the end, as logarithms.
/// Common practice.
pub(super) const EARLY_PLAUSIBLE: f64 = -0.24;
/// See [`EARLY_PLAUSIBLE`].
pub(super) const DOZES_PLAUSIBLE: f64 = -0.7;
/// A baby that dozes: the odds of flutter in any part of the feed, against those above. Common
/// practice.
pub(super) const DOZES_FLUTTER_ODDS: f64 = 2.5;
/// Its share of flutters that are a drowsy while: nearly all. Common practice.
pub(super) const DOZES_DROWSY_SHARE: f64 = 0.95;
/// How readily its feed ends in flutter and in another phase, against ending in flutter where that
/// comes at the end. Odds; common practice.
pub(super) const DOZES_ENDS_ODDS: (f64, f64) = (0.64, 0.33);
/// How readily a feed that was ended ends in another phase, against ending in flutter: most are
/// watched to the sleepy end. Odds; common practice.
pub(super) const ENDS_AWAKE_ODDS: f64 = 0.016;
/// A feed shorter than this counts as so long, in milliseconds: it may go on.
pub(super) const FLUTTER_FEED_MS_LEAST: u64 = 480_000;
/// Chance that a baby put back on after being off starts again with quick sucks. Common practice.
pub(super) const STARTS_AGAIN: f64 = 0.31;

/// Live, the phase shown changes only when another is at least so probable. This keeps it calm
/// and costs a few sucks of delay.
pub(super) const SWITCH_AT: f64 = 0.75;
