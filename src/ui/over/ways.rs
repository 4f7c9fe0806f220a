//! The ways out for a link: the share sheet, the clipboard, mail, a text message, a square code.

use super::contents::count;
use crate::core::message::Message;
use crate::job::qr::{self, Square};
use crate::ui::browser::share;
use crate::ui::components::parts::button;
use crate::ui::state::Page;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Light modules that belong around a code (ISO/IEC 18004, from memory).
const BORDER: usize = 4;

/// A link on its way out.
#[derive(Clone, Copy)]
pub struct Parcel {
    /// The address with the job in it.
    pub address: Memo<String>,
    /// Key of the words that go along; `.subject` stands over a mail.
    pub words: &'static str,
    /// Called once it has gone out.
    pub sent: Callback<()>,
}

/// Every way this device has.
pub fn ways(page: Page, parcel: Parcel) -> AnyView {
    let said = RwSignal::new("");
    let copy = move || {
        spawn_local(async move {
            let copied = share::copy(&parcel.address.get_untracked()).await;
            said.set(if copied { "send-copied" } else { "send-not-copied" });
            if copied {
                parcel.sent.run(());
            }
        });
    };
    let by_sheet = move || {
        spawn_local(async move {
            let words = page.key(parcel.words);
            let shared = share::share(&words, &parcel.address.get_untracked()).await;
            said.set(if shared { "send-shared" } else { "send-not-shared" });
            if shared {
                parcel.sent.run(());
            }
        });
    };
    let body = move || share::escaped(&format!("{}\n\n{}", page.key(parcel.words), parcel.address.get()));
    let mail = move || {
        let subject = share::escaped(&page.attr(parcel.words, "subject"));
        format!("mailto:?subject={subject}&body={}", body())
    };
    let sheet = share::can_share();
    let class = if sheet { "button" } else { "button main" };
    let heard = move || page.key(said.get());
    view! {
        <div class="ways" data-test="ways">
            {sheet.then(|| button(page.key("send-share"), "button main", "send-share", by_sheet))}
            {button(page.key("send-copy"), class, "send-copy", copy)}
            <a class="button" data-test="send-mail" href=mail on:click=move |_| parcel.sent.run(())>{page.key("send-mail")}</a>
            <a class="button" data-test="send-sms" href=move || format!("sms:?&body={}", body()) on:click=move |_| parcel.sent.run(())>
                {page.key("send-sms")}
            </a>
        </div>
        <p role="status" data-test="send-said">{move || (!said.get().is_empty()).then(heard)}</p>
        {code(page, parcel)}
        {letters(page, parcel.address)}
    }
    .into_any()
}

/// The link itself, to be copied by hand, with its length.
fn letters(page: Page, address: Memo<String>) -> AnyView {
    let mark_all =
        move |event: leptos::ev::FocusEvent| event_target::<web_sys::HtmlTextAreaElement>(&event).select();
    let length = move || {
        let length = address.with(|a| a.chars().count());
        page.say(&Message::new("send-length").with("count", count(length)))
    };
    view! {
        <label class="text">
            {page.key("send-link")}
            <textarea readonly rows="3" data-test="send-link" prop:value=address on:focus=mark_all></textarea>
        </label>
        <p class="quiet" data-test="send-length">{length}</p>
    }
    .into_any()
}

/// The square code, drawn on request; a press on it shows it large.
fn code(page: Page, parcel: Parcel) -> AnyView {
    let shown = RwSignal::new(false);
    let large = RwSignal::new(false);
    let toggle = move |_| {
        shown.update(|s| *s = !*s);
        if shown.get_untracked() {
            parcel.sent.run(());
        }
    };
    let drawn = move || {
        shown.get().then(|| match parcel.address.with(|a| qr::modules(a)) {
            Ok(square) => {
                let words = move || page.key(if large.get() { "send-code-smaller" } else { "send-code-larger" });
                view! {
                    <button type="button" class="code" class:large=large data-test="send-code" data-version=square.version()
                        aria-pressed=move || large.get().to_string() on:click=move |_| large.update(|l| *l = !*l)>
                        {drawing(page, &square)}
                        <span>{words}</span>
                    </button>
                    <p class="quiet">{page.key("send-code-about")}</p>
                }
                .into_any()
            }
            Err(_) => view! { <p class="refusal" data-test="send-code-long">{page.key("send-code-long")}</p> }.into_any(),
        })
    };
    view! {
        <button type="button" class="unfold" data-test="send-show-code" aria-expanded=move || shown.get().to_string() on:click=toggle>
            {move || page.key(if shown.get() { "send-hide-code" } else { "send-show-code" })}
        </button>
        {drawn}
    }
    .into_any()
}

fn drawing(page: Page, square: &Square) -> AnyView {
    let side = square.side();
    // One stroke of a row's dark run each: far fewer parts than modules.
    let mut path = String::new();
    for y in 0..side {
        let mut x = 0;
        while x < side {
            let run = (x..side).take_while(|x| square.dark(*x, y)).count();
            if run > 0 {
                path += &format!("M{} {}h{run}v1h-{run}z", x + BORDER, y + BORDER);
            }
            x += run.max(1);
        }
    }
    let across = side + 2 * BORDER;
    view! {
        <svg viewBox=format!("0 0 {across} {across}") role="img" aria-label=page.key("send-code-label") shape-rendering="crispEdges">
            <rect width=across height=across fill="#fff"></rect>
            <path d=path fill="#000"></path>
        </svg>
    }
    .into_any()
}

/// Said where the page's own address means nothing to anybody else.
pub fn from_file(page: Page) -> Option<AnyView> {
    share::is_from_file().then(|| {
        view! { <p class="caution" data-test="send-from-file">{page.key("send-from-file")}</p> }.into_any()
    })
}
