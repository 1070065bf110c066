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
/// follows from it"` or `=> unmarked`, and does not compile without.
///
/// After the fields: `figures all: Type => marked { "key": Type, "what it holds", "example"; }` for keys that stay words;
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
    (@head $whole:tt [$name_is:ident $($name_field:tt)*] $mark:tt
        $(#[$meta:meta])* pub struct $name:ident = $table:ident($title:literal, $about:literal) {
            $($field:ident: $type:ty = $($must:ident)? $key:literal, $what:literal, $example:literal $(as $way:ty)?
                $(=> $in:ident $($in_as:literal)*)?;)*
        }
        $(figures $figures:ident: $all:ty => $all_in:ident {
            $($fact_key:literal: $fact:ty, $fact_what:literal, $fact_example:literal;)*
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
                    shape: <$fact as $crate::vocabulary::Value>::SHAPE,
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
                $(<$all as $crate::vocabulary::Gathers<$fact>>::take(&mut $figures, &mut fields, $fact_key, faults);)*)?
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

    (@shape $type:ty) => { <$type as $crate::vocabulary::Held>::SHAPE };
    (@shape $type:ty, $way:ty) => { <$type as $crate::vocabulary::HeldAs<$way>>::SHAPE };
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
            const SHAPE: $crate::vocabulary::Shape = $crate::vocabulary::record!(@whole $whole $table);

            fn read(node: &$crate::source::yaml::Node, faults: &mut $crate::vocabulary::Faults) -> Option<Self> {
                let fields = $crate::vocabulary::record!(@fields $whole node, $table, faults)?;
                Self::of_fields(fields, faults)
            }
        }

        $crate::vocabulary::record! { @held $whole $name }
    };
    (@read $whole:tt $name_is:ident $name:ident $table:ident) => {
        impl $crate::vocabulary::NamedValue for $name {
            const SHAPE: $crate::vocabulary::Shape = $crate::vocabulary::record!(@whole $whole $table);

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
        $crate::vocabulary::Shape::Either(
            &<$of as $crate::vocabulary::Value>::SHAPE,
            &$crate::vocabulary::Shape::Record(&$table),
        )
    };
    (@whole $whole:tt $table:ident) => { $crate::vocabulary::Shape::Record(&$table) };
    (@fields (short $short:literal, $of:ty) $node:ident, $table:ident, $faults:ident) => {
        $crate::vocabulary::Fields::of_short($node, &$table, $short, $faults)
    };
    (@fields $whole:tt $node:ident, $table:ident, $faults:ident) => {
        $crate::vocabulary::Fields::of($node, &$table, $faults)
    };
    (@held group $name:ident) => {
        impl $crate::vocabulary::Held for $name {
            const SHAPE: $crate::vocabulary::Shape = <Self as $crate::vocabulary::Value>::SHAPE;

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
    (@within_mark marked $figures:ident unmarked) => { $crate::vocabulary::Mark::Out };
    (@within_mark unmarked $figures:ident unmarked) => { $crate::vocabulary::Mark::OfNoItem };
    (@mark unmarked $key:literal) => { $crate::vocabulary::Mark::OfNoItem };
    (@mark marked $key:literal [marked]) => { $crate::vocabulary::Mark::In($key) };
    (@mark marked $key:literal [marked $in_as:literal]) => { $crate::vocabulary::Mark::In($in_as) };
    (@mark marked $key:literal [marked $in_as:literal $what:literal]) => {
        $crate::vocabulary::Mark::Told($in_as, $what)
    };
    (@mark marked $key:literal [told $in_as:literal $what:literal]) => { $crate::vocabulary::Mark::Told($in_as, $what) };
    (@mark marked $key:literal [unmarked]) => { $crate::vocabulary::Mark::Out };
    (@mark marked $key:literal) => {
        compile_error!(concat!("`", $key, "` does not say whether it is in the mark: `=> marked` or `=> unmarked`"))
    };
    (@marked unmarked $($record:tt)*) => {};
    (@marked marked $name:ident { $($field:ident $key:literal $([$($in:tt)*])?;)* } { $($figures:ident [marked])? }) => {
        impl $crate::vocabulary::Marked for $name {
            fn marked(&self) -> serde_json::Map<String, serde_json::Value> {
                let mut content = serde_json::Map::new();
                $($crate::vocabulary::record!(@put content, self.$field, $key, $($($in)*)?);)*
                $(content.insert(stringify!($figures).into(), $crate::vocabulary::Shown::shown(&self.$figures));)?
                content
            }
        }

        impl $crate::vocabulary::Shown for $name {
            fn shown(&self) -> serde_json::Value {
                serde_json::Value::Object($crate::vocabulary::Marked::marked(self))
            }
        }
    };
    (@put $content:ident, $value:expr, $key:literal, marked) => {
        $content.insert($key.into(), $crate::vocabulary::Shown::shown(&$value))
    };
    (@put $content:ident, $value:expr, $key:literal, marked $in_as:literal $($what:literal)?) => {
        $content.insert($in_as.into(), $crate::vocabulary::Shown::shown(&$value))
    };
    (@put $content:ident, $value:expr, $key:literal, $($other:tt)*) => {};
    (@ $($other:tt)*) => { compile_error!("this is no record: see what `record!` says of how one is written") };
    ($($record:tt)*) => { $crate::vocabulary::record! { @head plain [unnamed] unmarked $($record)* } };
}
pub(crate) use record;
