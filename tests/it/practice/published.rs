//! The established baby against the published means, within their stated spread.

use feedside::practice::{Baby, HandLevel, Truth, TruthPhase, simulate};

fn truths(baby: Baby) -> Vec<Truth> {
    (0..120)
        .map(|seed| simulate(baby, HandLevel::Perfect.hand(), seed, 16).truth)
        .collect()
}

/// Mean over feeds of sucks per minute within runs, and of sucks per swallow, counted from sucks.
fn means(truths: &[Truth], phase: TruthPhase) -> (f64, f64) {
    let (mut rates, mut ratios) = (Vec::new(), Vec::new());
    for truth in truths {
        let (mut gaps, mut gap_ms, mut sucks, mut swallows) = (0, 0, 0, 0);
        let of_phase = |at| truth.phase_at(at) == Some(phase);
        for pair in truth.sucks.windows(2) {
            let ms = pair[1].0.since_ms(pair[0].0);
            // Rests are never shorter than 2 s.
            if of_phase(pair[0].0) && of_phase(pair[1].0) && ms < 2_000 {
                gaps += 1;
                gap_ms += ms;
            }
        }
        for (at, swallow) in &truth.sucks {
            if of_phase(*at) {
                sucks += 1;
                swallows += u32::from(*swallow);
            }
        }
        if 100 <= gaps && 10 <= swallows {
            rates.push(60_000.0 * f64::from(gaps) / gap_ms as f64);
            ratios.push(f64::from(sucks) / f64::from(swallows));
        }
    }
    assert!(30 <= rates.len());
    let mean = |values: &[f64]| values.iter().sum::<f64>() / values.len() as f64;
    (mean(&rates), mean(&ratios))
}

#[test]
fn rates_and_sucks_per_swallow_come_out_as_published() {
    // Hartmann, McClellan and others 2011, FASEB J 25 suppl 589.1: 90 and 107 sucks a minute, 2.5
    // and 6.7 sucks a swallow; the ranges of the latter are 1.3 to 8.7 and 2.5 to 23.
    let truths = truths(Baby::Established);
    let (flow_rate, flow_ratio) = means(&truths, TruthPhase::Flow);
    let (quick_rate, quick_ratio) = means(&truths, TruthPhase::Quick);
    println!("flow {flow_rate:.1} {flow_ratio:.2}, quick {quick_rate:.1} {quick_ratio:.2}");
    assert!((flow_rate / 90.0 - 1.0).abs() < 0.05);
    assert!((quick_rate / 107.0 - 1.0).abs() < 0.05);
    assert!((flow_ratio / 2.5 - 1.0).abs() < 0.12);
    assert!((quick_ratio / 6.7 - 1.0).abs() < 0.12);
}

#[test]
fn ejections_come_out_as_published() {
    // Ramsay and others 2004, Pediatrics 113:361: 2.5 ± 1.5 a feed. Gardner and others 2015, BMC
    // Pregnancy Childbirth 15:156: 45 s to 3.5 min each. Kent and others 2003, J Hum Lact 19:179,
    // from memory: the first after about 56 s.
    let truths = truths(Baby::Established);
    let mut counts = Vec::new();
    let mut firsts_s = Vec::new();
    for truth in &truths {
        let mut count = 0;
        let mut flowing = false;
        for span in &truth.phases {
            match span.phase {
                TruthPhase::Flow => {
                    count += u32::from(!flowing);
                    flowing = true;
                }
                TruthPhase::Rest | TruthPhase::Off => {}
                TruthPhase::Quick | TruthPhase::Flutter => flowing = false,
            }
        }
        counts.push(f64::from(count));
        firsts_s.extend(truth.first_flow.map(|it| it.as_ms() as f64 / 1_000.0));
    }
    let mean = counts.iter().sum::<f64>() / counts.len() as f64;
    firsts_s.sort_by(f64::total_cmp);
    let median_s = firsts_s[firsts_s.len() / 2];
    println!("{mean:.2} ejections, the first after {median_s:.0} s");
    assert!((1.5..=3.0).contains(&mean), "{mean}");
    assert!((46.0..=70.0).contains(&median_s), "{median_s}");
}

#[test]
fn kinds_of_baby_differ_as_the_trade_says() {
    let flow = |baby| means(&truths(baby), TruthPhase::Flow).1;
    // Hartmann and others 2011: the published range begins at 1.3 sucks a swallow.
    assert!(flow(Baby::FastFlow) < flow(Baby::Established));
    // Little milk on day one: Casey and others 1986, AJDC 140:933; direction only.
    assert!(flow(Baby::Established) < flow(Baby::FirstDays));
    let flutter_share = |baby| {
        let truths = truths(baby);
        let all: usize = truths.iter().map(|it| it.sucks.len()).sum();
        let flutter = truths.iter().flat_map(|truth| {
            truth
                .sucks
                .iter()
                .filter(|it| truth.phase_at(it.0) == Some(TruthPhase::Flutter))
        });
        flutter.count() as f64 / all as f64
    };
    // Common practice.
    assert!(flutter_share(Baby::Established) < flutter_share(Baby::Sleepy));
}
