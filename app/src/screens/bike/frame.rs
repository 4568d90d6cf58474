//! The bike's name, gears in number and bar measures.

use crate::erase::{When, flag, memo};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{Bar, Bike};
use leverwright_core::edit::BikeEdit;
use leverwright_core::rider::{Answer, YesNo};
use leverwright_core::spot::Spot;
use leverwright_core::text::Text;
use leverwright_core::units::Mm;

use super::{OpenMark, Stand};
use crate::widgets::{Choice, NumberField, TextField, all_or_not_asked};

/// What the bike is.
#[component]
pub fn FrameSection() -> impl IntoView {
    let stand = Stand::here();
    let text = move |read: fn(&Bike) -> String| memo(move || stand.read(read).unwrap_or_default());
    let kind = text(|bike| format!("{}, {}", bike.bar.kind.words(), bike.frame.words()));
    let catcher = memo(move || stand.read(|b| b.chain_catcher.value).flatten());
    let has_front = memo(move || stand.read(Bike::has_front_derailleur).unwrap_or(false));
    let set_catcher = Callback::new(move |value: Option<YesNo>| {
        stand.commit(BikeEdit::ChainCatcher(
            value.map_or(Answer::NOT_ASKED, Answer::of),
        ));
    });
    view! {
        <section class="bike-frame" aria-labelledby="what-it-is">
            <h2 id="what-it-is">"What it is"</h2>
            <p>{kind}</p>
            <div class="fields">
                <TextField label="Name of the bike" value=text(|b| b.name.as_str().to_owned())
                    set={move |name: String| stand.commit(BikeEdit::Name(Text::new(&name)))}/>
                <NumberField label="Chainrings" least=1.0 most=3.0
                    value={memo(move || stand.read(|b| f64::from(b.rings())))}
                    set={move |n| stand.commit(BikeEdit::Rings(whole(n)))}/>
                <NumberField label="Cogs" least=1.0 most=14.0
                    value={memo(move || stand.read(|b| f64::from(b.cogs())))}
                    set={move |n| stand.commit(BikeEdit::Cogs(whole(n)))}/>
                <BarMeasure label="Bar width (mm)" read=|bar| bar.width
                    write=|bar, mm| bar.width = mm/>
                <BarMeasure label="Bar reach (mm)" read=|bar| bar.reach
                    write=|bar, mm| bar.reach = mm/>
                <BarMeasure label="Bar drop (mm)" read=|bar| bar.drop
                    write=|bar, mm| bar.drop = mm/>
            </div>
            <When holds={flag(move || has_front.get())}>
                <OpenMark spot=Spot::ChainCatcher/>
                <Choice legend="A chain catcher is fitted" name="chain-catcher"
                    choices=all_or_not_asked() chosen=catcher choose=set_catcher/>
            </When>
        </section>
    }
}

/// A count out of a field; what is out of range the core refuses in words.
fn whole(n: Option<f64>) -> u8 {
    // A float cast saturates, and zero is refused with a sentence.
    n.unwrap_or(0.0) as u8
}

#[component]
fn BarMeasure(label: &'static str, read: fn(&Bar) -> Mm, write: fn(&mut Bar, Mm)) -> impl IntoView {
    let stand = Stand::here();
    let value = memo(move || stand.read(|bike| read(&bike.bar).0));
    let set = move |n: Option<f64>| {
        let Some(mut bar) = stand.bike.with_untracked(|b| b.as_ref().map(|b| b.bar)) else {
            return;
        };
        write(&mut bar, Mm(n.unwrap_or(0.0)));
        stand.commit(BikeEdit::BarMeasures(bar));
    };
    view! { <NumberField label least=0.0 most=1000.0 value set/> }
}
