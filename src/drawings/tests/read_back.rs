//! Reads shapes and lettering out of a drawing's SVG.

use crate::drawings::lettering::{Line, Run};
use crate::drawings::place::Frame;
use crate::drawings::scale::Mil;
use roxmltree::{Document, Node};

/// A number as thousandths; the drawing writes no more than three decimals.
pub fn mils(text: &str) -> Mil {
    let (whole, rest) = text.split_once('.').unwrap_or((text, ""));
    let size: Mil = format!("{}{rest:0<3}", whole.trim_start_matches('-')).parse().expect("digits");
    if text.starts_with('-') { -size } else { size }
}

pub fn attribute(node: Node, name: &str) -> Mil {
    mils(node.attribute(name).expect("the attribute is there"))
}

/// The shapes that the drawing calls so.
pub fn named<'a>(document: &'a Document, name: &str) -> Vec<Node<'a, 'a>> {
    let is = |node: &Node| node.attribute("data-is") == Some(name);
    document.descendants().filter(is).collect()
}

/// The x of every point of a path of straight lines.
pub fn across(path: Node) -> Vec<Mil> {
    let d = path.attribute("d").expect("a path");
    let points = d.trim_end_matches('Z').split(['M', 'L']).filter(|point| !point.is_empty());
    points.map(|point| mils(point.split(' ').next().expect("an x"))).collect()
}

/// What the page shows.
pub fn view_box(document: &Document) -> Frame {
    let text = document.root_element().attribute("viewBox").expect("a viewBox");
    let [x, y, w, h] = text.split(' ').map(mils).collect::<Vec<_>>()[..] else { panic!("four numbers, not {text}") };
    Frame::new(x, y, w, h)
}

/// All the lettering of an element, as it would be copied.
pub fn lettering(node: Node) -> String {
    node.descendants().filter_map(|inner| inner.is_text().then(|| inner.text()).flatten()).collect()
}

/// Every text of the drawing and the room that it takes, capitals' height and descenders included.
pub fn texts(document: &Document) -> Vec<(String, Frame)> {
    let texts = document.descendants().filter(|node| node.has_tag_name("text"));
    texts.map(|node| (lettering(node), room(node))).collect()
}

fn room(node: Node) -> Frame {
    let (x, y, size) = (attribute(node, "x"), attribute(node, "y"), attribute(node, "font-size"));
    let runs = node.children().map(|child| match child.is_text() {
        true => Run::Plain(lettering(child)),
        false => Run::Fraction(lettering(child)),
    });
    let wide = Line::of(runs.collect(), size).width();
    let before = match node.attribute("text-anchor") {
        Some("start") => 0,
        Some("end") => wide,
        _ => wide / 2,
    };
    // The family's capitals are 700 of 1000 high, its descenders 200 deep.
    let (up, down) = (size * 7 / 10, size * 2 / 10);
    match node.attribute("transform").is_some() {
        false => Frame::new(x - before, y - up, wide, up + down),
        true => Frame::new(x - up, y - (wide - before), up + down, wide),
    }
}
