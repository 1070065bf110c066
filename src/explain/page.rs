//! Plain text at the width of a page.

/// The widest line, in characters.
pub const WIDTH: usize = 92;

/// A heading, ruled.
pub fn heading(title: &str) -> String {
    format!("{title}\n{}\n", "─".repeat(title.chars().count()))
}

/// A paragraph, wrapped, and an empty line.
pub fn paragraph(text: &str) -> String {
    wrapped(text, "", "") + "\n"
}

/// A list's item, wrapped under its first word.
pub fn item(text: &str) -> String {
    wrapped(text, "  · ", "    ")
}

/// A name and what it means, wrapped beside it.
pub fn entry(name: &str, text: &str) -> String {
    const COLUMN: usize = 24;
    let blank = " ".repeat(COLUMN);
    if name.chars().count() + 2 < COLUMN {
        let lead = format!("  {name}{}", " ".repeat(COLUMN - 2 - name.chars().count()));
        return wrapped(text, &lead, &blank);
    }
    format!("  {name}\n{}", wrapped(text, &blank, &blank))
}

/// Words that go on one line while they fit.
fn wrapped(text: &str, first: &str, rest: &str) -> String {
    let mut lines = String::new();
    let mut line = first.to_string();
    let mut empty = true;
    for word in text.split_whitespace() {
        if !empty && line.chars().count() + 1 + word.chars().count() > WIDTH {
            lines += line.trim_end();
            lines.push('\n');
            line = rest.to_string();
            empty = true;
        }
        if !empty {
            line.push(' ');
        }
        line += word;
        empty = false;
    }
    lines + line.trim_end() + "\n"
}

/// A table's rows: in columns where the page is wide enough, otherwise each row's first cell with the
/// others beside it.
fn table(lines: &[&str]) -> String {
    let cells = |line: &&str| line.trim().trim_matches('|').split('|').map(|cell| cell.trim().to_string()).collect();
    let rows: Vec<Vec<String>> =
        lines.iter().filter(|line| line.contains(|letter| !matches!(letter, '|' | '-' | ' '))).map(cells).collect();
    let columns = rows.iter().map(Vec::len).max().unwrap_or_default();
    let width = |at: usize| rows.iter().filter_map(|row| row.get(at)).map(|cell| cell.chars().count()).max();
    let widths: Vec<usize> = (0..columns).map(|at| width(at).unwrap_or_default() + 2).collect();
    let told = |row: &Vec<String>| match row.split_first() {
        Some((first, rest)) if widths.iter().sum::<usize>() > WIDTH => entry(first, &rest.join("; ")),
        _ => {
            let padded = row.iter().zip(&widths).map(|(cell, width)| format!("{cell:width$}"));
            format!("  {}\n", padded.collect::<String>().trim_end())
        }
    };
    rows.iter().map(told).collect::<String>() + "\n"
}

/// The words of a doc comment as plain text: each of its lines begins with a blank.
pub fn of_comment(comment: &str) -> String {
    let lines = comment.lines().map(|line| line.strip_prefix(' ').unwrap_or(line));
    prose(&lines.collect::<Vec<_>>().join("\n"))
}

/// Markdown as plain text: headings ruled, paragraphs wrapped, tables in columns, code as it stands.
pub fn prose(markdown: &str) -> String {
    let mut text = String::new();
    let mut paragraph: Vec<&str> = Vec::new();
    let mut code = false;
    let flush = |paragraph: &mut Vec<&str>, text: &mut String| {
        if paragraph.first().is_some_and(|line| line.starts_with('|')) {
            *text += &table(paragraph);
        } else if !paragraph.is_empty() {
            *text += &self::paragraph(&paragraph.join(" "));
        }
        paragraph.clear();
    };
    for line in markdown.lines() {
        if line.trim_start().starts_with("```") {
            flush(&mut paragraph, &mut text);
            code = !code;
            if !code {
                text.push('\n');
            }
        } else if code {
            text += &cut(&format!("    {line}"));
        } else if let Some(title) = line.strip_prefix("## ") {
            flush(&mut paragraph, &mut text);
            text += &heading(title);
        } else if line.trim().is_empty() {
            flush(&mut paragraph, &mut text);
        } else {
            paragraph.push(line);
        }
    }
    flush(&mut paragraph, &mut text);
    text
}

/// A line of code, broken where it is wider than the page.
pub fn cut(line: &str) -> String {
    let letters: Vec<char> = line.chars().collect();
    if letters.len() <= WIDTH {
        return format!("{line}\n");
    }
    // After a comma, so that no key of two words is torn; else between words.
    let ends =
        |at: usize| letters.get(at) == Some(&' ') && at.checked_sub(1).and_then(|at| letters.get(at)) == Some(&',');
    let comma = (0..WIDTH).rev().find(|at| ends(*at) && *at > WIDTH / 3);
    let blank = comma.or_else(|| letters.iter().take(WIDTH).rposition(|letter| *letter == ' '));
    let (first, rest) = letters.split_at(blank.filter(|at| *at > 8).unwrap_or(WIDTH));
    let (first, rest): (String, String) = (first.iter().collect(), rest.iter().collect());
    // Deeper than where it began, so that what is copied is still one value; a remark goes on as one.
    let indent = " ".repeat(line.chars().take_while(|letter| *letter == ' ').count() + 4);
    let remark = if first.contains(" # ") || first.trim_start().starts_with("# ") { "# " } else { "" };
    format!("{first}\n{}", cut(&format!("{indent}{remark}{}", rest.trim_start())))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_table_stands_in_columns_and_a_wide_one_in_entries() {
        let narrow = of_comment(" | length | count |\n | --- | --- |\n | 4 ft | 1 or 2 |\n");
        assert_eq!(narrow, "  length  count\n  4 ft    1 or 2\n\n");
        let wide = of_comment(&format!(" | what | figure |\n | --- | --- |\n | joint | {} |\n", "wide ".repeat(30)));
        assert!(wide.lines().all(|line| line.chars().count() <= WIDTH), "{wide}");
        assert!(wide.contains("  joint                 wide wide"), "{wide}");
    }
}
