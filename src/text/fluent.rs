//! Evaluates Project Fluent messages: the parts of the language that the words use, on the project's own
//! parser of its syntax. The full library brings every language's plural rules and its own number and
//! date formats into the page, twice this room's size there; here numbers come formatted, and a language
//! brings its own plural rule. A test holds the two side by side.
//!
//! Known: text, string and number literals, variables, messages and terms put into others (terms with
//! their arguments), attributes, selection by text, number and plural. Not known: functions.

use super::language::File;
use super::plurals::Plural;
use crate::core::numeric::number;
use fluent_syntax::ast::{
    Attribute, CallArguments, Entry, Expression, InlineExpression, Pattern, PatternElement, Variant,
    VariantKey,
};
use fluent_syntax::parser;
use fluent_syntax::unicode::unescape_unicode_to_string;
use litemap::LiteMap;

/// How deep words may be put into words; deeper ones go round in circles.
const DEEPEST: usize = 8;

type Text = &'static str;

/// A value put into a message.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Value {
    /// Words, or a number already written.
    Text(String),
    /// A number that plurals may follow: its value, the decimals it is written with, and as it is
    /// written.
    Number(f64, usize, String),
}

impl Value {
    fn written(&self) -> &str {
        match self {
            Value::Text(text) | Value::Number(.., text) => text,
        }
    }
}

/// Named values.
pub(super) type Args = LiteMap<String, Value>;

struct Message {
    value: Option<Pattern<Text>>,
    attributes: Vec<Attribute<Text>>,
}

/// The messages of one language.
pub(super) struct Bundle {
    /// The files it has.
    names: Vec<Text>,
    // Boxed, so that putting one in among hundreds moves little.
    messages: LiteMap<Text, Box<Message>>,
    terms: LiteMap<Text, Box<Message>>,
    plural: Plural,
}

/// What an evaluation carries along.
struct Scope<'a> {
    args: &'a Args,
    faults: &'a mut Vec<String>,
    depth: usize,
}

impl Bundle {
    /// No messages yet.
    pub(super) fn new(plural: Plural) -> Self {
        Bundle { names: Vec::new(), messages: LiteMap::new(), terms: LiteMap::new(), plural }
    }

    /// Puts in the messages of these files, except those it has. What a file gets wrong is left out; a test
    /// refuses any mistake.
    pub(super) fn add(&mut self, files: &[File]) {
        for (name, text) in files {
            if self.names.contains(name) {
                continue;
            }
            self.names.push(name);
            for entry in parser::parse_runtime(*text).unwrap_or_else(|(partial, _)| partial).body {
                match entry {
                    Entry::Message(m) => {
                        let message = Message { value: m.value, attributes: m.attributes };
                        self.messages.insert(m.id.name, Box::new(message));
                    }
                    Entry::Term(t) => {
                        let message = Message { value: Some(t.value), attributes: t.attributes };
                        self.terms.insert(t.id.name, Box::new(message));
                    }
                    Entry::Comment(_)
                    | Entry::GroupComment(_)
                    | Entry::ResourceComment(_)
                    | Entry::Junk { .. } => {}
                }
            }
        }
    }

    /// Whether a message has a text of its own.
    pub(super) fn has(&self, key: &str) -> bool {
        self.messages.get(key).is_some_and(|m| m.value.is_some())
    }

    /// The text of a message, or of one of its attributes; `None` where there is none. What is missing
    /// inside shows its name in braces and is noted in `faults`.
    pub(super) fn say(
        &self,
        key: &str,
        attribute: Option<&str>,
        args: &Args,
        faults: &mut Vec<String>,
    ) -> Option<String> {
        let pattern = part(self.messages.get(key)?, attribute)?;
        let mut out = String::new();
        self.pattern(pattern, &mut Scope { args, faults, depth: 0 }, &mut out);
        Some(out)
    }

    fn pattern(&self, pattern: &Pattern<Text>, scope: &mut Scope, out: &mut String) {
        for element in &pattern.elements {
            match element {
                PatternElement::TextElement { value } => out.push_str(value),
                PatternElement::Placeable { expression } => self.expression(expression, scope, out),
            }
        }
    }

    fn expression(&self, expression: &Expression<Text>, scope: &mut Scope, out: &mut String) {
        match expression {
            Expression::Inline(inline) => self.inline(inline, scope, out),
            Expression::Select { selector, variants } => {
                let value = self.value(selector, scope);
                let chosen = variants.iter().find(|v| self.matches(&v.key, &value));
                if let Some(Variant { value, .. }) = chosen.or_else(|| variants.iter().find(|v| v.default)) {
                    self.pattern(value, scope, out);
                }
            }
        }
    }

    fn matches(&self, key: &VariantKey<Text>, value: &Value) -> bool {
        match (key, value) {
            (VariantKey::Identifier { name }, Value::Text(text)) => name == text,
            (VariantKey::Identifier { name }, Value::Number(n, decimals, _)) => {
                *name == (self.plural)(*n, *decimals)
            }
            (VariantKey::NumberLiteral { value }, Value::Number(n, ..)) => number(value) == Some(*n),
            (VariantKey::NumberLiteral { .. }, Value::Text(_)) => false,
        }
    }

    /// What a selection goes by: a number stays one.
    fn value(&self, inline: &InlineExpression<Text>, scope: &mut Scope) -> Value {
        if let InlineExpression::VariableReference { id } = inline
            && let Some(value) = scope.args.get(id.name)
        {
            return value.clone();
        }
        match inline {
            InlineExpression::NumberLiteral { value } => {
                let decimals = value.split_once('.').map_or(0, |(_, rest)| rest.len());
                number(value).map_or_else(
                    || Value::Text((*value).to_owned()),
                    |n| Value::Number(n, decimals, (*value).to_owned()),
                )
            }
            other => {
                let mut text = String::new();
                self.inline(other, scope, &mut text);
                Value::Text(text)
            }
        }
    }

    fn inline(&self, inline: &InlineExpression<Text>, scope: &mut Scope, out: &mut String) {
        match inline {
            InlineExpression::StringLiteral { value } => out.push_str(&unescape_unicode_to_string(value)),
            InlineExpression::NumberLiteral { value } => out.push_str(value),
            InlineExpression::VariableReference { id } => match scope.args.get(id.name) {
                Some(value) => out.push_str(value.written()),
                None => missing(&format!("${}", id.name), scope, out),
            },
            InlineExpression::MessageReference { id, attribute } => {
                let attribute = attribute.as_ref().map(|a| a.name);
                match self.messages.get(id.name).and_then(|m| part(m, attribute)) {
                    Some(pattern) => self.deeper(pattern, scope.args, scope.depth, scope.faults, out),
                    None => missing(id.name, scope, out),
                }
            }
            InlineExpression::TermReference { id, attribute, arguments } => {
                let attribute = attribute.as_ref().map(|a| a.name);
                match self.terms.get(id.name).and_then(|t| part(t, attribute)) {
                    Some(pattern) => {
                        // A term sees its own arguments and no others.
                        let args = arguments.as_ref().map(|a| self.arguments(a, scope)).unwrap_or_default();
                        self.deeper(pattern, &args, scope.depth, scope.faults, out);
                    }
                    None => missing(&format!("-{}", id.name), scope, out),
                }
            }
            InlineExpression::FunctionReference { id, .. } => missing(&format!("{}()", id.name), scope, out),
            InlineExpression::Placeable { expression } => self.expression(expression, scope, out),
        }
    }

    fn arguments(&self, arguments: &CallArguments<Text>, scope: &mut Scope) -> Args {
        arguments.named.iter().map(|a| (a.name.name.to_owned(), self.value(&a.value, scope))).collect()
    }

    fn deeper(
        &self,
        pattern: &Pattern<Text>,
        args: &Args,
        depth: usize,
        faults: &mut Vec<String>,
        out: &mut String,
    ) {
        let mut scope = Scope { args, faults, depth: depth + 1 };
        if scope.depth > DEEPEST {
            missing("…", &mut scope, out);
        } else {
            self.pattern(pattern, &mut scope, out);
        }
    }
}

fn part<'a>(message: &'a Message, attribute: Option<&str>) -> Option<&'a Pattern<Text>> {
    match attribute {
        Some(name) => message.attributes.iter().find(|a| a.id.name == name).map(|a| &a.value),
        None => message.value.as_ref(),
    }
}

fn missing(what: &str, scope: &mut Scope, out: &mut String) {
    scope.faults.push(format!("nothing for {what}"));
    out.push('{');
    out.push_str(what);
    out.push('}');
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::plurals::english;
    use fluent_bundle::{FluentArgs, FluentBundle, FluentResource};

    const SAMPLE: &str = r#"
-brand = Water
-tank = { $size ->
    [small] little tank
   *[big] big tank
}
    .short = tank
plain = Just words.
escaped = {"\u00A0"}{"{"}x{"}"} and {"\""}
put = { $a } and { plain } of { -brand }
many = { $n ->
    [0] none
    [one] one thing
   *[other] { $n } things
}
chosen = { $kind ->
    [gas] burner
   *[electric] element
}
called = A { -tank(size: "small") }, a { -tank }.
attributed = { many.note }
with = value
    .note = a note on { $a }
only =
    .note = no value
lines =
    First line
    second line

    after a gap
nested = { $n ->
   *[other] { $kind ->
        [gas] G
       *[x] X { plain }
    }
}
round = { circle }
circle = { round }
wanting = { $nobody } { nothing } { -nothing } { FUNCTION(1) }
decimal = { 1.0 ->
    [one] one
   *[other] other
}
"#;

    fn ours() -> Bundle {
        let mut bundle = Bundle::new(english);
        bundle.add(&[("sample", SAMPLE)]);
        bundle
    }

    /// The same files and values through the reference library.
    fn theirs(key: &str, attribute: Option<&str>, args: &Args) -> Option<String> {
        let mut bundle = FluentBundle::new(vec!["en".parse().expect("a language")]);
        bundle.set_use_isolating(false);
        bundle
            .add_resource(FluentResource::try_new(SAMPLE.to_owned()).expect("it parses"))
            .expect("no key twice");
        let mut values = FluentArgs::new();
        for (name, value) in args {
            match value {
                Value::Text(text) => values.set(name.clone(), text.clone()),
                Value::Number(n, ..) => values.set(name.clone(), *n),
            }
        }
        let message = bundle.get_message(key)?;
        let pattern = match attribute {
            Some(name) => message.get_attribute(name)?.value(),
            None => message.value()?,
        };
        Some(bundle.format_pattern(pattern, Some(&values), &mut Vec::new()).into_owned())
    }

    #[test]
    fn as_the_reference_library_says_it() {
        for (n, kind) in [(0.0, "gas"), (1.0, "electric"), (2.0, "steam"), (-1.0, "gas")] {
            let args = Args::from_iter([
                (String::from("n"), Value::Number(n, 0, n.to_string())),
                (String::from("kind"), Value::Text(kind.into())),
                (String::from("a"), Value::Text("this".into())),
            ]);
            for key in [
                "plain", "escaped", "put", "many", "chosen", "called", "with", "only", "lines", "nested",
                "no", "decimal",
            ] {
                for attribute in [None, Some("note")] {
                    let said = ours().say(key, attribute, &args, &mut Vec::new());
                    assert_eq!(said, theirs(key, attribute, &args), "{key} {attribute:?} {n} {kind}");
                }
            }
        }
    }

    #[test]
    fn what_is_missing_is_seen_and_circles_end() {
        let mut faults = Vec::new();
        let said = ours().say("wanting", None, &Args::new(), &mut faults);
        assert_eq!(said.as_deref(), Some("{$nobody} {nothing} {-nothing} {FUNCTION()}"));
        assert_eq!(faults.len(), 4);
        faults.clear();
        assert_eq!(ours().say("round", None, &Args::new(), &mut faults).as_deref(), Some("{…}"));
        assert_eq!(faults.len(), 1);
        assert!(ours().say("attributed", None, &Args::new(), &mut faults).is_some() && faults.len() == 2);
        assert!(ours().has("with") && !ours().has("only") && !ours().has("nobody"));
    }
}
