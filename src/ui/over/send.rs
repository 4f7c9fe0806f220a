//! Sending the open job: what goes along is said before it goes; name, address and notes stay here unless ticked.

use super::contents::{all_of, count, says};
use super::ways::{self, Parcel};
use crate::core::message::Message;
use crate::job::asking;
use crate::job::link;
use crate::job::questions::{self, Id, Section, Who};
use crate::job::{Job, Part};
use crate::ui::browser::share;
use crate::ui::components::parts::tick;
use crate::ui::state::Page;
use leptos::prelude::*;

/// A job about to be sent.
#[derive(Clone, Copy)]
struct Sending {
    page: Page,
    back: bool,
    with: RwSignal<link::With>,
    asked: RwSignal<Vec<Id>>,
    /// One time for the whole sheet, so that the link stands still.
    at_ms: f64,
}

/// The sheet to send by.
pub fn dialog(page: Page, back: bool) -> AnyView {
    view! {
        <h2 id="over-name">{page.key(if back { "send-back-heading" } else { "send-heading" })}</h2>
        <p class="quiet">{page.key("send-about")}</p>
        {panel(page, back)}
    }
    .into_any()
}

/// What goes along, what may, whom it asks what, and the ways out.
pub fn panel(page: Page, back: bool) -> AnyView {
    let asked = page.job.with_untracked(|j| to_ask(&j.sheet, back));
    let sending = Sending {
        page,
        back,
        with: RwSignal::new(link::With { offer: true, back, ..link::With::default() }),
        asked: RwSignal::new(asked),
        at_ms: js_sys::Date::now(),
    };
    let address = Memo::new(move |_| share::address_with(&sending.link()));
    let sent = Callback::new(move |()| sending.remember());
    let parcel = Parcel { address, words: if back { "send-words-back" } else { "send-words" }, sent };
    let told = move || says(page, link::contents(&sending.job(), sending.with.get()), "send-contents");
    // Read back from the link itself: what stands there, and nothing that only should.
    let whole = move || link::decode(&sending.link()).ok().map(|opened| all_of(page, &opened.job));
    view! {
        {ways::from_file(page)}
        <h3>{page.key("send-contains")}</h3>
        {told}
        {whole}
        {sending.ticks()}
        {(!back).then(|| sending.asking())}
        {ways::ways(page, parcel)}
    }
    .into_any()
}

/// What to ask at first: what was asked before and is still open, or else a suggestion.
fn to_ask(job: &Job, back: bool) -> Vec<Id> {
    if back {
        return job.asked.clone();
    }
    let open: Vec<Id> = job.open_questions().collect();
    if open.is_empty() { asking::suggest(&job.answers, &job.offer, asking::USUAL) } else { open }
}

impl Sending {
    /// The job as it would be sent.
    fn job(self) -> Job {
        let mut job = self.page.job.with(|j| j.sheet.clone());
        job.asked = self.asked.get();
        job
    }

    fn link(self) -> String {
        link::encode(&self.job(), self.with.get(), self.at_ms)
    }

    /// Keeps in the job what was asked of whom it went to.
    fn remember(self) {
        let asked = self.asked.get_untracked();
        if !self.back && self.page.job.with_untracked(|j| j.sheet.asked != asked) {
            self.page.alter(|job| job.asked = asked);
        }
    }

    /// What stays here unless ticked.
    fn ticks(self) -> AnyView {
        let page = self.page;
        let text = move |part: Part, key: &'static str, put: fn(&mut link::With, bool)| {
            let there = page.job.with_untracked(|j| !j.sheet.text(part).is_empty());
            there.then(|| self.tick(key, Signal::derive(move || self.with.with(|w| w.has(part))), put))
        };
        let offer = !self.back && page.job.with_untracked(|j| !j.sheet.offer.is_empty());
        view! {
            <div class="ticks">
                {text(Part::Name, "send-tick-name", |w, on| w.name = on)}
                {text(Part::Place, "send-tick-place", |w, on| w.place = on)}
                {text(Part::Notes, "send-tick-notes", |w, on| w.notes = on)}
                {offer.then(|| {
                    self.tick("send-tick-offer", Signal::derive(move || self.with.with(|w| w.offer)), |w, on| w.offer = on)
                })}
            </div>
        }
        .into_any()
    }

    fn tick(self, key: &'static str, ticked: Signal<bool>, put: fn(&mut link::With, bool)) -> AnyView {
        let set = Callback::new(move |on| self.with.update(|w| put(w, on)));
        tick(self.page.key(key), String::from(key), ticked, set)
    }

    /// The questions for whoever gets it: those suggested, and folded away the others that are open.
    fn asking(self) -> AnyView {
        let page = self.page;
        let first = self.asked.get_untracked();
        let open = |id: Id| page.answers.with_untracked(|a| a.get(id).is_none());
        let others: Vec<Id> =
            questions::all().map(|q| q.id).filter(|id| !first.contains(id) && open(*id)).collect();
        let heading =
            move || page.say(&Message::new("send-asks").with("count", count(self.asked.with(Vec::len))));
        let suggested = first.iter().map(|id| self.ask(*id)).collect_view();
        let further = Section::ALL
            .into_iter()
            .map(|section| {
                let of = |id: &&Id| questions::Question::get(**id).section == section;
                let all: Vec<AnyView> = others.iter().filter(of).map(|id| self.ask(*id)).collect();
                (!all.is_empty()).then(|| {
                    view! {
                        <h4>{page.key(&format!("section-{}", section.code()))}</h4>
                        {all}
                    }
                })
            })
            .collect_view();
        view! {
            <h3 data-test="send-asks">{heading}</h3>
            <p class="quiet">{page.key("send-asks-about")}</p>
            <div class="ticks" data-test="send-suggested">{suggested}</div>
            <details class="data">
                <summary>{page.key("send-asks-more")}</summary>
                <div class="ticks">{further}</div>
            </details>
        }
        .into_any()
    }

    fn ask(self, id: Id) -> AnyView {
        let page = self.page;
        let on_site = questions::Question::get(id).who == Who::OnSite;
        let name = page.key(&id.key());
        let words = if on_site { format!("{name} ({})", page.key("send-on-site")) } else { name };
        let ticked = Signal::derive(move || self.asked.with(|a| a.contains(&id)));
        let set = Callback::new(move |on: bool| {
            // In the order of the question list, as the receiver goes through them.
            let wanted = |of: &Id| if *of == id { on } else { self.asked.with_untracked(|a| a.contains(of)) };
            self.asked.set(questions::all().map(|q| q.id).filter(wanted).collect());
        });
        tick(words, format!("ask-{}", id.code()), ticked, set)
    }
}
