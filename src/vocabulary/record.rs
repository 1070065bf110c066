//! A record, written down once: its struct, its reader, its row in the tables and its part of the mark.

/// A record, written once: its struct, its reader, and its table for `explain`, the schemas and the mark.
///
/// `record! { pub struct Name = TABLE("its name", "what it is") { field: Type = "key", "what it holds",
/// "example"; } }`. The type says how a field is read; `as Way` after the example says it otherwise
/// (`as name::Wall`), and `required` before the key that the record is told to lack it.
///
/// Words before `pub struct`: `group` for what is always there, empty where nothing is written; `short "key" as
/// Type;` where the value of one key may stand for the group; `named` for what stands under a name of the
/// designer's own, and `item` where faults in it are told under that name; `marked` for what the client signs: each
/// of its fields ends with `=> marked` (and, where they differ there, its key and what it is), `=> told "key" "what
/// follows from it"` or `=> unmarked "why"`, and does not compile without; `shown` for what stands whole
/// in a field that is marked, or on a sheet for those who build; a field there may be `=> unmarked "why"`.
///
/// A field that comes later is `marked_since_2` or `marked_since_3`: the content of older issues does not hold it.
///
/// After the fields: `figures all: Type => marked by Names { Name = "key": Type, "what it holds", "example"; }` for what
/// is asked by its name, `Names::Name`;
/// `besides { field: Type = |fields| …; }` for what no key holds; `then step` for what is to be settled or found
/// faulty when all is read.
macro_rules! record {
    (@head $whole:tt $named:tt $mark:tt group $($record:tt)*) => {
        $crate::vocabulary::record! { @head group $named $mark $($record)* }
    };
    (@head $whole:tt $named:tt $mark:tt short $short:literal as $of:ty; $($record:tt)*) => {
        $crate::vocabulary::record! { @head (short $short, $of) $named $mark $($record)* }
    };
    (@head $whole:tt $named:tt $mark:tt named $($record:tt)*) => {
        $crate::vocabulary::record! {
            @head $whole [named #[doc = "Its name in the book."] pub name: $crate::source::Spanned<String>,] $mark $($record)*
        }
    };
    (@head $whole:tt $named:tt $mark:tt item $($record:tt)*) => {
        $crate::vocabulary::record! {
            @head $whole [item #[doc = "Its name in the room."] pub name: $crate::source::Spanned<String>,] $mark $($record)*
        }
    };
    (@head $whole:tt $named:tt $mark:tt marked $($record:tt)*) => {
        $crate::vocabulary::record! { @head $whole $named marked $($record)* }
    };
    (@head $whole:tt $named:tt $mark:tt shown $($record:tt)*) => {
        $crate::vocabulary::record! { @head $whole $named shown $($record)* }
    };
    (@head $whole:tt [$name_is:ident $($name_field:tt)*] $mark:tt
        $(#[$meta:meta])* pub struct $name:ident = $table:ident($title:literal, $about:literal) {
            $($field:ident: $type:ty = $($must:ident)? $key:literal, $what:literal, $example:literal $(as $way:ty)?
                $(=> $in:ident $($in_as:literal)*)?;)*
        }
        $(figures $figures:ident: $all:ty => $all_in:ident by $names:ident {
            $($fact_name:ident = $fact_key:literal: $fact:ty, $fact_what:literal, $fact_example:literal;)*
        })?
        $(besides { $($(#[$other_meta:meta])* $other:ident: $other_type:ty $(= $start:expr)?;)* })?
        $(then $step:expr)?
    ) => {
        #[doc = $about]
        $(#[$meta])*
        #[derive(Clone, Debug, PartialEq, Eq)]
        pub struct $name {
            $($name_field)*
            $(#[doc = $what] pub $field: $type,)*
            $(#[doc = "What stands under the other keys."] pub $figures: $all,)?
            $($($(#[$other_meta])* pub $other: $other_type,)*)?
        }

        $($crate::vocabulary::words! {
            #[doc = "The names of those other keys."]
            pub enum $names { $($fact_name = $fact_key,)* }
        })?

        #[doc = concat!("The table of `", $title, "`.")]
        pub const $table: $crate::vocabulary::Record = $crate::vocabulary::Record {
            name: $title,
            about: $about,
            fields: &[
                $($crate::vocabulary::Field {
                    key: $key,
                    shape: $crate::vocabulary::record!(@shape $type $(, $way)?),
                    required: $crate::vocabulary::record!(@required [$($must)?] $type $(, $way)?),
                    about: $what,
                    example: $example,
                    mark: $crate::vocabulary::record!(@mark $mark $key $([$in $($in_as)*])?),
                },)*
                $($($crate::vocabulary::Field {
                    key: $fact_key,
                    shape: <$fact as $crate::vocabulary::Value>::TYPE,
                    required: false,
                    about: $fact_what,
                    example: $fact_example,
                    mark: $crate::vocabulary::record!(@within_mark $mark $figures $all_in),
                },)*)?
            ],
        };

        impl $name {
            #[doc = "Reads it out of its keys; none when it is faulty, having said so."]
            pub fn of_fields(
                mut fields: $crate::vocabulary::Fields<'_>,
                faults: &mut $crate::vocabulary::Faults,
            ) -> Option<Self> {
                $(let $field = $crate::vocabulary::record!(@take fields, faults, $key, $type $(, $way)?);)*
                $(let mut $figures = <$all>::default();
                $(<$all as $crate::vocabulary::Gathers<$fact>>::take(&mut $figures, &mut fields, $names::$fact_name, faults);)*)?
                $($(let $other: $other_type = $crate::vocabulary::record!(@start fields $(, $start)?);)*)?
                let (_name, at) = (fields.name.clone(), fields.span);
                fields.finish(faults);
                let read = $crate::vocabulary::record!(
                    @build $name_is _name $name { $($field,)* } { $($figures,)? $($($other,)*)? }
                );
                $crate::vocabulary::record!(@then read, at, faults $(, $step)?)
            }
        }

        $crate::vocabulary::record! { @read $whole $name_is $name $table }
        $crate::vocabulary::record! {
            @marked $mark $name { $($field $key $([$in $($in_as)*])?;)* } { $($figures [$all_in])? }
        }
    };

    (@shape $type:ty) => { <$type as $crate::vocabulary::Held>::TYPE };
    (@shape $type:ty, $way:ty) => { <$type as $crate::vocabulary::HeldAs<$way>>::TYPE };
    (@required [required] $($type:tt)*) => { true };
    (@required [] $type:ty) => { <$type as $crate::vocabulary::Held>::REQUIRED };
    (@required [] $type:ty, $way:ty) => { <$type as $crate::vocabulary::HeldAs<$way>>::REQUIRED };
    (@take $fields:ident, $faults:ident, $key:literal, $type:ty) => {
        <$type as $crate::vocabulary::Held>::take(&mut $fields, $key, $faults)
    };
    (@take $fields:ident, $faults:ident, $key:literal, $type:ty, $way:ty) => {
        <$type as $crate::vocabulary::HeldAs<$way>>::take_as(&mut $fields, $key, $faults)
    };
    (@start $fields:ident) => { Default::default() };
    (@start $fields:ident, $start:expr) => { $crate::vocabulary::Fields::tell(&$fields, $start) };
    (@build unnamed $called:ident $name:ident { $($field:ident,)* } { $($other:ident,)* }) => {
        $name { $($field: $field?,)* $($other,)* }
    };
    (@build $name_is:ident $called:ident $name:ident { $($field:ident,)* } { $($other:ident,)* }) => {
        $name { name: $called?, $($field: $field?,)* $($other,)* }
    };
    (@then $read:ident, $at:ident, $faults:ident) => {{ let _ = $at; Some($read) }};
    (@then $read:ident, $at:ident, $faults:ident, $step:expr) => { $step($read, $at, $faults) };

    (@read $whole:tt unnamed $name:ident $table:ident) => {
        impl $crate::vocabulary::Value for $name {
            const TYPE: $crate::vocabulary::FieldType = $crate::vocabulary::record!(@whole $whole $table);

            fn read(node: &$crate::source::yaml::Node, faults: &mut $crate::vocabulary::Faults) -> Option<Self> {
                let fields = $crate::vocabulary::record!(@fields $whole node, $table, faults)?;
                Self::of_fields(fields, faults)
            }
        }

        $crate::vocabulary::record! { @held $whole $name }
    };
    (@read $whole:tt $name_is:ident $name:ident $table:ident) => {
        impl $crate::vocabulary::NamedValue for $name {
            const TYPE: $crate::vocabulary::FieldType = $crate::vocabulary::record!(@whole $whole $table);

            fn name(&self) -> &str {
                &self.name
            }

            fn read_named(
                name: &$crate::source::Spanned<String>,
                node: &$crate::source::yaml::Node,
                faults: &mut $crate::vocabulary::Faults,
            ) -> Option<Self> {
                $crate::vocabulary::record!(@within $name_is name, faults, {
                    let fields = $crate::vocabulary::record!(@fields $whole node, $table, faults);
                    fields.and_then(|fields| Self::of_fields(fields.called(name), faults))
                })
            }
        }
    };
    (@within named $called:ident, $faults:ident, $read:block) => { $read };
    (@within item $called:ident, $faults:ident, $read:block) => {{
        let before = $faults.item.replace($called.clone());
        let read = $read;
        $faults.item = before;
        read
    }};
    (@whole (short $short:literal, $of:ty) $table:ident) => {
        $crate::vocabulary::FieldType::Either(
            &<$of as $crate::vocabulary::Value>::TYPE,
            &$crate::vocabulary::FieldType::Record(&$table),
        )
    };
    (@whole $whole:tt $table:ident) => { $crate::vocabulary::FieldType::Record(&$table) };
    (@fields (short $short:literal, $of:ty) $node:ident, $table:ident, $faults:ident) => {
        $crate::vocabulary::Fields::of_short($node, &$table, $short, $faults)
    };
    (@fields $whole:tt $node:ident, $table:ident, $faults:ident) => {
        $crate::vocabulary::Fields::of($node, &$table, $faults)
    };
    (@held group $name:ident) => {
        impl $crate::vocabulary::Held for $name {
            const TYPE: $crate::vocabulary::FieldType = <Self as $crate::vocabulary::Value>::TYPE;

            fn take(
                fields: &mut $crate::vocabulary::Fields<'_>,
                key: &'static str,
                faults: &mut $crate::vocabulary::Faults,
            ) -> Option<Self> {
                let read = |node| <Self as $crate::vocabulary::Value>::read(node, faults);
                Some(fields.node(key).and_then(read).unwrap_or_default())
            }
        }
    };
    (@held $whole:tt $name:ident) => {};

    (@within_mark marked $figures:ident marked) => { $crate::vocabulary::Mark::Within(stringify!($figures)) };
    (@within_mark unmarked $figures:ident unmarked) => { $crate::vocabulary::Mark::OfNoItem };
    (@mark unmarked $key:literal) => { $crate::vocabulary::Mark::OfNoItem };
    (@mark shown $key:literal [unmarked $why:literal]) => { $crate::vocabulary::Mark::Out($why) };
    (@mark shown $key:literal) => { $crate::vocabulary::Mark::In($key, $crate::vocabulary::Since::Second) };
    (@mark marked $key:literal [marked]) => { $crate::vocabulary::record!(@mark_in First $key) };
    (@mark marked $key:literal [marked $in_as:literal]) => { $crate::vocabulary::record!(@mark_in First $in_as) };
    (@mark marked $key:literal [marked $in_as:literal $what:literal]) => {
        $crate::vocabulary::Mark::Told($in_as, $what)
    };
    (@mark marked $key:literal [told $in_as:literal $what:literal]) => { $crate::vocabulary::Mark::Told($in_as, $what) };
    (@mark marked $key:literal [marked_since_2]) => { $crate::vocabulary::record!(@mark_in Second $key) };
    (@mark marked $key:literal [marked_since_3]) => { $crate::vocabulary::record!(@mark_in Third $key) };
    (@mark marked $key:literal [unmarked $why:literal]) => { $crate::vocabulary::Mark::Out($why) };
    (@mark marked $key:literal [unmarked]) => {
        compile_error!(concat!("`", $key, "` does not say why it is not in the mark: `=> unmarked \"…\"`"))
    };
    (@mark marked $key:literal) => {
        compile_error!(concat!("`", $key, "` does not say whether it is in the mark: `=> marked` or `=> unmarked`"))
    };
    (@mark_in $since:ident $key:literal) => { $crate::vocabulary::Mark::In($key, $crate::vocabulary::Since::$since) };
    (@marked unmarked $($record:tt)*) => {};
    (@marked $mark:ident $name:ident { $($field:ident $key:literal $([$($in:tt)*])?;)* } { $($figures:ident [marked])? }) => {
        impl $crate::vocabulary::Marked for $name {
            fn marked(&self) -> $crate::vocabulary::ShownGroup {
                let fields = [
                    $($crate::vocabulary::record!(@put self.$field, $key, $($($in)*)?),)*
                    $($crate::vocabulary::record!(@put self.$figures, First stringify!($figures)),)?
                ];
                fields.into_iter().flatten().collect()
            }
        }

        impl $crate::vocabulary::Shown for $name {
            fn shown(&self) -> $crate::vocabulary::ShownValue {
                $crate::vocabulary::ShownValue::Group($crate::vocabulary::Marked::marked(self))
            }
        }
    };
    (@put $value:expr, $key:literal,) => { $crate::vocabulary::record!(@put $value, Second $key) };
    (@put $value:expr, $key:literal, marked) => {
        $crate::vocabulary::record!(@put $value, First $key)
    };
    (@put $value:expr, $key:literal, marked $in_as:literal $($what:literal)?) => {
        $crate::vocabulary::record!(@put $value, First $in_as)
    };
    (@put $value:expr, $key:literal, marked_since_2) => {
        $crate::vocabulary::record!(@put $value, Second $key)
    };
    (@put $value:expr, $key:literal, marked_since_3) => {
        $crate::vocabulary::record!(@put $value, Third $key)
    };
    (@put $value:expr, $since:ident $key:expr) => {
        Some($crate::vocabulary::ShownField::new(
            $key,
            $crate::vocabulary::Since::$since,
            $crate::vocabulary::Shown::shown(&$value),
        ))
    };
    (@put $value:expr, $key:literal, $($other:tt)*) => { None };
    (@ $($other:tt)*) => { compile_error!("this is no record: see what `record!` says of how one is written") };
    ($($record:tt)*) => { $crate::vocabulary::record! { @head plain [unnamed] unmarked $($record)* } };
}
pub(crate) use record;

#[cfg(test)]
mod tests {
    use crate::source::{Files, yaml};
    use crate::units::Length;
    use crate::vocabulary::{Faults, Mark, Marked, Shown as _, ShownValue, Since, Slot, Value};

    record! {
        marked
        pub struct Sample = SAMPLE("sample", "what is tried here") {
            name: Slot<String> = required "name", "what it is called", "sample" => marked;
            wide: Slot<Length> = "width", "how wide it is", "1 mm" => marked "wide";
            latest: Slot<Part> = "latest", "what came last", "{wide: 2 mm}" => marked_since_2;
            note: Slot<String> = "note", "what nobody signs", "a note" => unmarked "nobody reads it";
            kept: Slot<String> = "kept", "what something else follows from", "a sheet" => told "from it" "what follows";
        }
        besides {
            /// Whether a note is written.
            is_noted: bool = |fields| fields.place_of("note").is_some();
        }
        then Sample::when_read
    }

    record! {
        shown
        #[derive(Default)]
        pub struct Part = PART("part", "a part of what is tried here") {
            wide: Slot<Length> = "wide", "how wide it is", "2 mm";
            deep: Slot<Length> = "deep", "how deep it is", "3 mm";
        }
    }

    impl Sample {
        fn when_read(self, at: crate::source::Span, faults: &mut Faults) -> Option<Self> {
            if self.wide.get() == Some(&Length::ZERO) {
                faults.stop(crate::finding::Code::WRONG_TYPE, at, "a sample is nothing wide", "measure it");
                return None;
            }
            Some(self)
        }
    }

    fn read(text: &str) -> (Option<Sample>, Vec<String>) {
        let file = Files::default().add("a.yaml".into(), text.into());
        let (node, mut faults) = (yaml::parse(file, text).unwrap().root.unwrap(), Faults::default());
        let read = Sample::read(&node, &mut faults);
        (read, faults.findings.iter().map(|finding| finding.message.to_string()).collect())
    }

    #[test]
    fn a_field_of_what_is_signed_is_in_the_mark_or_says_why_it_is_not() {
        let keys = |text| -> Vec<(String, Since, bool)> {
            let marked = read(text).0.unwrap().marked();
            marked.into_iter().map(|field| (field.key.into(), field.since, field.value.is_empty())).collect()
        };
        let key = |key: &str, since, empty| (key.to_string(), since, empty);
        let [name, wide, latest] = ["name", "wide", "latest"];
        assert_eq!(
            keys("{name: a, note: b, kept: c}"),
            [key(name, Since::First, false), key(wide, Since::First, true), key(latest, Since::Second, true)]
        );
        let part = read("{name: a, latest: {wide: 2 mm}}").0.unwrap().latest.shown();
        assert_eq!(part.get("wide"), Some(&ShownValue::Length(Length::from_nanometres(2_000_000))));
        assert!(part.get("deep").unwrap().is_empty());
        let marks: Vec<Mark> = SAMPLE.fields.iter().map(|field| field.mark).collect();
        let told = [
            Mark::In(name, Since::First),
            Mark::In(wide, Since::First),
            Mark::In(latest, Since::Second),
            Mark::Out("nobody reads it"),
            Mark::Told("from it", "what follows"),
        ];
        assert_eq!(marks, told);
    }

    #[test]
    fn what_is_missing_unknown_or_found_wrong_in_the_end_is_told() {
        assert_eq!(read("{wide: 1 mm}").1, ["unknown key `wide`", "a sample lacks its `name`"]);
        let (none, told) = read("{name: a, width: 0 mm}");
        assert!(none.is_none() && told == ["a sample is nothing wide"]);
        assert!(read("{name: a, note: b}").0.unwrap().is_noted);
    }
}
