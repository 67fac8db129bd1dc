//! The paths a source text names: without comments and literals, with `use` trees spread out and `super` resolved.

/// A source text as words and signs, without comments, strings and characters.
pub struct Bare(Vec<String>);

impl Bare {
    pub fn words(&self) -> impl Iterator<Item = &str> {
        self.0.iter().map(String::as_str)
    }

    /// All of it without spaces between.
    pub fn squeezed(&self) -> String {
        self.0.concat()
    }
}

/// Takes comments and literals away and splits the rest; `::` is one sign.
pub fn bare(text: &str) -> Bare {
    let mut tokens = Vec::new();
    let chars: Vec<char> = text.chars().collect();
    let at = |index: usize| chars.get(index).copied().unwrap_or('\0');
    let mut index = 0;
    while index < chars.len() {
        let (here, next) = (at(index), at(index + 1));
        if here == '/' && next == '/' {
            while index < chars.len() && at(index) != '\n' {
                index += 1;
            }
        } else if here == '/' && next == '*' {
            let mut depth = 0;
            loop {
                match (at(index), at(index + 1)) {
                    ('/', '*') => (index, depth) = (index + 2, depth + 1),
                    ('*', '/') => (index, depth) = (index + 2, depth - 1),
                    _ => index += 1,
                }
                if depth == 0 || index >= chars.len() {
                    break;
                }
            }
        } else if here == '"' {
            index = string_end(&chars, index);
        } else if here == '\'' {
            // A character ends with a quote; a lifetime does not.
            if next == '\\' {
                index += 3;
                while index < chars.len() && at(index) != '\'' {
                    index += 1;
                }
                index += 1;
            } else if at(index + 2) == '\'' {
                index += 3;
            } else {
                index += 1;
            }
        } else if here.is_alphanumeric() || here == '_' {
            let start = index;
            while at(index).is_alphanumeric() || at(index) == '_' {
                index += 1;
            }
            let word: String = chars[start..index].iter().collect();
            let hashes = (index..chars.len()).take_while(|place| at(*place) == '#').count();
            if matches!(word.as_str(), "r" | "br" | "cr") && at(index + hashes) == '"' {
                index = raw_end(&chars, index, hashes);
            } else if matches!(word.as_str(), "b" | "c") && at(index) == '"' {
                index = string_end(&chars, index);
            } else {
                tokens.push(word);
            }
        } else if here == ':' && next == ':' {
            tokens.push("::".to_owned());
            index += 2;
        } else {
            if !here.is_whitespace() {
                tokens.push(here.to_string());
            }
            index += 1;
        }
    }
    Bare(tokens)
}

/// Behind the closing quote of the string that opens at `open`.
fn string_end(chars: &[char], open: usize) -> usize {
    let mut index = open + 1;
    while index < chars.len() && chars[index] != '"' {
        index += if chars[index] == '\\' { 2 } else { 1 };
    }
    index + 1
}

fn raw_end(chars: &[char], from: usize, hashes: usize) -> usize {
    let mut index = from + hashes + 1;
    while index < chars.len() {
        if chars[index] == '"' && chars[index + 1..].iter().take(hashes).filter(|sign| **sign == '#').count() == hashes {
            return index + 1 + hashes;
        }
        index += 1;
    }
    index
}

/// Every path with a `::` in it, resolved: those into this crate begin with `crate`. `module` is the module the text is.
pub fn named_paths(code: &Bare, module: &[String]) -> Vec<Vec<String>> {
    let tokens = &code.0;
    let mut found = Vec::new();
    let mut here = module.to_vec();
    // Depths of braces at which an inner module began.
    let mut inner: Vec<usize> = Vec::new();
    let mut depth = 0;
    let mut index = 0;
    while index < tokens.len() {
        let token = tokens[index].as_str();
        match token {
            "{" => depth += 1,
            "}" => {
                if inner.last() == Some(&depth) {
                    inner.pop();
                    here.pop();
                }
                depth -= 1;
            }
            "mod" if tokens.get(index + 2).is_some_and(|sign| sign == "{") => {
                here.push(tokens[index + 1].clone());
                inner.push(depth + 1);
                depth += 1;
                index += 3;
                continue;
            }
            // What an opaque type captures names no path.
            "use" if tokens.get(index + 1).is_some_and(|sign| sign == "<") => {}
            "use" => {
                let (paths, end) = use_tree(tokens, index + 1);
                found.extend(paths.into_iter().filter_map(|path| resolved(path, &here)));
                index = end;
                continue;
            }
            _ if is_word(token) && tokens.get(index + 1).is_some_and(|sign| sign == "::") => {
                let mut path = vec![token.to_owned()];
                while tokens.get(index + 1).is_some_and(|sign| sign == "::") && tokens.get(index + 2).is_some_and(|word| is_word(word)) {
                    path.push(tokens[index + 2].clone());
                    index += 2;
                }
                found.extend(resolved(path, &here));
            }
            _ => {}
        }
        index += 1;
    }
    found
}

fn is_word(token: &str) -> bool {
    token.starts_with(|first: char| first.is_alphabetic() || first == '_')
}

/// The paths of a `use` whose tree begins at `index`, and where it ends.
fn use_tree(tokens: &[String], mut index: usize) -> (Vec<Vec<String>>, usize) {
    let mut paths = Vec::new();
    let mut stack: Vec<Vec<String>> = Vec::new();
    let mut path: Vec<String> = Vec::new();
    while let Some(token) = tokens.get(index).map(String::as_str) {
        match token {
            ";" => break,
            "{" => stack.push(path.clone()),
            "}" | "," => {
                let prefix = stack.last().cloned().unwrap_or_default();
                if path.len() > prefix.len() {
                    paths.push(path);
                }
                if token == "}" {
                    stack.pop();
                }
                path = stack.last().cloned().unwrap_or_default();
            }
            // The name it goes by here does not matter.
            "as" => index += 1,
            "::" => {}
            word => path.push(word.to_owned()),
        }
        index += 1;
    }
    if !path.is_empty() && stack.is_empty() {
        paths.push(path);
    }
    (paths, index)
}

/// A path from the crate's root, or from an outside crate; `None` for one that begins with a name of its own module.
fn resolved(path: Vec<String>, here: &[String]) -> Option<Vec<String>> {
    let root = || vec!["crate".to_owned()];
    match path[0].as_str() {
        "crate" | "pourbook" => Some(root().into_iter().chain(path.into_iter().skip(1)).collect()),
        "self" => Some(root().into_iter().chain(here.iter().cloned()).chain(path.into_iter().skip(1)).collect()),
        "super" => {
            let up = path.iter().take_while(|part| *part == "super").count();
            let kept = here.len().saturating_sub(up);
            Some(root().into_iter().chain(here[..kept].iter().cloned()).chain(path.into_iter().skip(up)).collect())
        }
        "Self" => None,
        _ => Some(path),
    }
}
