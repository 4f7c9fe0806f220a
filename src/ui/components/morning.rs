//! The tank picture played through the busiest morning: two tanks side by side, play, pause and scrub.

use super::pair::{Pair, pair};
use super::tank::{TankPicture, WarmthLegend, both_names};
use crate::core::outcome::Morning;
use crate::ui::browser::media;
use crate::ui::charts::morning::clock;
use crate::ui::state::page;
use leptos::leptos_dom::helpers::IntervalHandle;
use leptos::prelude::*;
use std::time::Duration;

/// How long the whole morning takes to play.
const PLAYED_S: f64 = 30.0;
/// Between two pictures.
const PICTURE_MS: u64 = 60;
/// For readers who want less motion: between two stills, and how far one still is from the next.
const STILL: (u64, f64) = (2_000, 300.0);

/// The two tanks and their controls.
#[component]
pub fn BusiestMorning() -> impl IntoView {
    let page = page();
    let pair = pair();
    let first = untrack(|| pair.with(|a, b| opening(&a.morning, &b.morning)));
    let at = RwSignal::new(first.unwrap_or(0));
    let end = Memo::new(move |_| {
        pair.with(|a, b| a.morning.power_w.len().max(b.morning.power_w.len())).unwrap_or(1).max(1) - 1
    });
    let time = move || {
        let seconds = pair.with(|a, _| a.morning.start_s + at.get() as f64 * a.morning.step_s);
        clock(page, seconds.unwrap_or(0.0))
    };
    let player = Player { at, end, timer: StoredValue::new_local(None), playing: RwSignal::new(false), pair };
    on_cleanup(move || player.stop());
    view! {
        <section class="morning" aria-labelledby="morning-name" data-test="tanks">
            <h2 id="morning-name">{page.key("page-tank")}</h2>
            <p>{page.key("page-tank-about")}</p>
            <div class="tanks" role="group" aria-label=move || both_names(page, pair)>
                <TankPicture at=at.into() beside=false/>
                <TankPicture at=at.into() beside=true/>
            </div>
            <div class="player">
                <button type="button" class="button" data-test="play" on:click=move |_| player.toggle()>
                    {move || page.key(if player.playing.get() { "page-tank-pause" } else { "page-tank-play" })}
                </button>
                <input
                    type="range"
                    min="0"
                    data-test="scrub"
                    max=move || end.get().to_string()
                    prop:value=move || at.get().to_string()
                    aria-label=page.key("page-tank-scrub")
                    aria-valuetext=time
                    on:input=move |event| {
                        player.stop();
                        at.set(event_target_value(&event).parse().unwrap_or(0));
                    }
                />
                <output class="clock" data-test="clock">{time}</output>
            </div>
            <WarmthLegend/>
        </section>
    }
}

/// The moment shown before anybody plays: when the water first turns cold, or the end of the last
/// shower, where the two differ most.
fn opening(a: &Morning, b: &Morning) -> usize {
    let at = |when: f64| ((when - a.start_s) / a.step_s).max(0.0) as usize;
    let drawing = |m: &Morning| m.tap_c.iter().rposition(|&celsius| celsius > 0.0);
    a.cold_at_s.or(b.cold_at_s).map(at).or(drawing(a)).or(drawing(b)).unwrap_or(0)
}

#[derive(Clone, Copy)]
struct Player {
    at: RwSignal<usize>,
    end: Memo<usize>,
    timer: StoredValue<Option<IntervalHandle>, LocalStorage>,
    playing: RwSignal<bool>,
    pair: Pair,
}

impl Player {
    fn toggle(self) {
        if self.playing.get_untracked() { self.stop() } else { self.play() }
    }

    fn play(self) {
        let end = self.end.get_untracked();
        if self.at.get_untracked() >= end {
            self.at.set(0);
        }
        let step_s = untrack(|| self.pair.with(|a, _| a.morning.step_s)).unwrap_or(60.0);
        let (every, stride) = if media::still() {
            (STILL.0, STILL.1 / step_s)
        } else {
            (PICTURE_MS, end as f64 * PICTURE_MS as f64 / 1_000.0 / PLAYED_S)
        };
        let start = self.at.get_untracked() as f64;
        let pictures = StoredValue::new(0.0);
        let show = move || {
            pictures.update_value(|n| *n += 1.0);
            let at = (start + stride * pictures.get_value()) as usize;
            self.at.set(at.min(end));
            if at >= end {
                self.stop();
            }
        };
        self.timer.set_value(set_interval_with_handle(show, Duration::from_millis(every)).ok());
        self.playing.set(true);
    }

    fn stop(self) {
        // After the page has gone there is nothing left to stop.
        if let Some(Some(handle)) = self.timer.try_update_value(Option::take) {
            handle.clear();
        }
        let _ = self.playing.try_set(false);
    }
}
