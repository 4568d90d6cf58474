//! The sheet as plain text: for copying, for screen readers, for tests.

use super::{
    AcceptedPoint, BrakeLine, ButtonRow, Field, HandLine, LatchState, OpenPoint, Page, Setting,
    Sheet, ThrowTest, Tick, TickList, WireLine, capital,
};

/// A line to fill in by hand.
const BLANK: &str = "________";
/// A box to tick.
const BOX: &str = "[ ]";

impl Sheet {
    /// The whole sheet as plain text, page by page.
    pub fn to_text(&self) -> String {
        let pages: Vec<String> = self
            .pages()
            .into_iter()
            .map(|page| self.page_text(page))
            .collect();
        pages.join("\n")
    }

    /// One page as plain text.
    pub fn page_text(&self, page: Page) -> String {
        let mut text = Lines(Vec::new());
        text.add(format!("== {} == {}", page, self.title.running_head()));
        match page {
            Page::OnTheStand => self.on_the_stand(&mut text),
            Page::Work => self.work_page(&mut text),
            Page::Proof => self.proof_page(&mut text),
            Page::Gears => self.gears_page(&mut text),
            Page::Hands => self.hands_page(&mut text),
        }
        text.0.join("\n") + "\n"
    }

    fn on_the_stand(&self, text: &mut Lines) {
        text.add(format!("{}. {}", self.verdict.readiness, self.verdict.line));
        text.all(self.verdict.reasons.iter().map(open));
        if self.verdict.accepted > 0 {
            text.add(format!("Accepted with a reason: {}", self.verdict.accepted));
        }
        text.all(self.proved.iter().cloned());
        text.all(self.decided.iter().cloned());
        text.all(self.title.fields.iter().map(field));
        text.heading("Buttons");
        text.all(self.buttons.iter().map(button));
        text.heading("Brakes");
        text.all(self.brakes.levers.iter().map(lever));
        text.all(self.brakes.notes.iter().cloned());
        text.heading("Settings");
        text.add(self.settings.system.clone());
        text.all(self.settings.settings.iter().map(setting));
        text.all(
            self.settings
                .left_alone
                .iter()
                .map(|line| format!("not typed in: {line}")),
        );
        text.add(self.settings.after_reset.into());
    }

    fn work_page(&self, text: &mut Lines) {
        text.heading("Parts");
        text.all(
            self.parts
                .iter()
                .map(|p| format!("{BOX} {} | {} | {}", p.quantity, p.part, p.purpose)),
        );
        text.heading("Wires");
        text.all(self.wires.iter().map(wire));
        text.ticks(&self.work);
        for list in &self.stand_check {
            text.ticks(list);
        }
    }

    fn proof_page(&self, text: &mut Lines) {
        text.heading("Coverage");
        text.add(self.coverage.about_bad_day());
        for line in &self.coverage.lines {
            let needed = if line.needed {
                ""
            } else {
                " (the shift plan does without)"
            };
            text.add(format!("{}{needed}", line.what));
            for (position, cell) in self.coverage.positions.iter().zip(&line.cells) {
                let bad = cell.bad.as_ref().map(|bad| format!("; bad day: {bad}"));
                text.add(format!(
                    "  {position}: {}{}",
                    cell.usual,
                    bad.unwrap_or_default()
                ));
            }
        }
        text.heading("Open points");
        text.all(self.open.iter().map(open));
        if self.open.is_empty() {
            text.add(self.no_open_points().to_owned());
        }
        text.heading("Accepted points");
        text.all(self.accepted.iter().map(accepted));
        text.none(self.accepted.is_empty());
        for list in &self.first_ride {
            text.ticks(list);
        }
        text.heading("Cautions");
        text.all(self.cautions.iter().map(ToString::to_string));
        text.heading("Sign-off");
        text.add(super::SIGNATURE_NOTE.into());
        for (who, fields) in &self.sign_off {
            text.add((*who).into());
            text.all(fields.iter().map(field));
        }
    }

    fn gears_page(&self, text: &mut Lines) {
        let Some(card) = &self.gears else { return };
        text.add(card.summary.clone());
        text.all(card.facts.iter().map(field));
        text.heading("Shift plan");
        text.all(card.settings.iter().map(setting));
        text.heading("What it asks of the hands");
        text.all(card.asks.iter().cloned());
        text.heading("Gears");
        text.add(card.table.heads.join(" | "));
        text.all(card.table.rows.iter().map(|row| row.cells.join(" | ")));
    }

    fn hands_page(&self, text: &mut Lines) {
        let Some(page) = &self.hands else { return };
        text.add(page.note.into());
        text.add(page.icf_note.into());
        for (side, lines) in &page.hands {
            text.heading(&capital(&format!("{side} hand")));
            text.all(lines.iter().map(hand_line));
        }
        text.heading("Asked once");
        text.all(page.once.iter().map(hand_line));
        text.heading("In the rider’s words");
        text.add(page.own_words.clone());
        text.heading("Not assessed here");
        text.add(page.not_assessed.join(", "));
        text.heading("Seen by");
        text.all(page.sign.iter().map(field));
        text.add(super::SIGNATURE_NOTE.into());
    }
}

struct Lines(Vec<String>);

impl Lines {
    fn add(&mut self, line: String) {
        self.0.push(line.trim_end().to_string());
    }

    fn all(&mut self, lines: impl Iterator<Item = String>) {
        lines.for_each(|line| self.add(line));
    }

    fn heading(&mut self, heading: &str) {
        self.0.push(String::new());
        self.add(format!("-- {heading}"));
    }

    fn none(&mut self, none: bool) {
        if none {
            self.add("none".into());
        }
    }

    fn ticks(&mut self, list: &TickList) {
        self.heading(list.title);
        if !list.note.is_empty() {
            self.add(list.note.into());
        }
        self.all(list.ticks.iter().map(tick));
    }
}

/// The balloons before a line: "(3, 4) ".
fn balloons(numbers: &[usize]) -> String {
    if numbers.is_empty() {
        return String::new();
    }
    let numbers: Vec<String> = numbers.iter().map(usize::to_string).collect();
    format!("({}) ", numbers.join(", "))
}

fn field(field: &Field) -> String {
    let value = field.value.as_deref().unwrap_or(BLANK);
    format!("{}: {value}", field.label)
}

fn tick(tick: &Tick) -> String {
    let boxes = vec![BOX; usize::from(tick.boxes)].join("");
    let expect = if tick.expect.is_empty() {
        String::new()
    } else {
        format!(": {}", tick.expect)
    };
    let fields: String = tick
        .fields
        .iter()
        .map(|field| format!(" {field}: {BLANK}"))
        .collect();
    let numbers = balloons(&tick.numbers);
    format!("{boxes} {numbers}{}{expect}{fields}", tick.act)
}

fn open(point: &OpenPoint) -> String {
    let never = if point.never {
        ", can never be accepted"
    } else {
        ""
    };
    let numbers = balloons(&point.numbers);
    format!(
        "{BOX} {}{never}: {numbers}{}",
        capital(&point.severity.to_string()),
        point.message
    )
}

fn accepted(point: &AcceptedPoint) -> String {
    let by = if point.by.is_empty() {
        BLANK
    } else {
        &point.by
    };
    let date = point.date.map_or_else(|| BLANK.into(), |d| d.to_string());
    format!(
        "{}: {}{} Reason: {} ({by}, {}, {date})",
        capital(&point.severity.to_string()),
        balloons(&point.numbers),
        point.message,
        point.reason,
        point.role,
    )
}

fn button(row: &ButtonRow) -> String {
    let mut line = format!(
        "{BOX} {} {} | was {} | now {}",
        row.number, row.place, row.was, row.now
    );
    if let Some(hold) = row.hold {
        line.push_str(&format!(" | hold: {hold}"));
    }
    for chord in &row.chords {
        line.push_str(&format!(" | {chord}"));
    }
    let pressed = row.pressed.to_string();
    if !pressed.is_empty() {
        line.push_str(&format!(" | {pressed}"));
    }
    line
}

fn lever(line: &BrakeLine) -> String {
    let mut text = format!("{BOX} {} | {}", line.chain(), line.blade);
    if line.throw != ThrowTest::NotNeeded {
        text.push_str(&format!(" | throw {}", line.throw));
    }
    if line.latch != LatchState::None {
        text.push_str(&format!(" | parking latch {}", line.latch));
    }
    if let Some(by) = &line.pulled_by {
        text.push_str(&format!(" | {by}"));
    }
    text
}

fn setting(setting: &Setting) -> String {
    let value = setting.value.as_deref().unwrap_or(BLANK);
    let numbers = balloons(&setting.numbers);
    format!("{BOX} {numbers}{}: {value}", setting.what)
}

fn wire(line: &WireLine) -> String {
    let mut text = format!(
        "{BOX} {}{} | {} | {}",
        balloons(&line.numbers),
        line.control,
        line.link,
        line.act()
    );
    if line.measure {
        text.push_str(&format!(
            " | hub and port {BLANK} | length at full lock + 30 mm {BLANK}"
        ));
    }
    if !line.unused_port.is_empty() {
        text.push_str(&format!(" | {}", line.unused_port));
    }
    text
}

fn hand_line(line: &HandLine) -> String {
    let before = match line.before.as_str() {
        "" => String::new(),
        before => format!("; {before}"),
    };
    if line.source.is_empty() {
        return format!("{}: {}{before}", line.asked, line.answer);
    }
    let from: Vec<&str> = [&line.source, &line.date, &line.worn]
        .into_iter()
        .map(String::as_str)
        .filter(|part| !part.is_empty())
        .collect();
    let from = from.join(", ");
    format!("{}: {} ({from}){before}", line.asked, line.answer)
}
