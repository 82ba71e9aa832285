// Formulas and what programs print are not code: colours only where a page names a language.
export default {
  configureHljs: (hljs) => hljs.configure({ languages: [] }),
  start: () => document.querySelectorAll("article pre > code").forEach(foldCommand),
};

// A command of one line is folded at its spaces, never in an option or a quoted value.
function foldCommand(code) {
  const words = code.textContent.trim();
  if (!words.startsWith("dotnet ") || words.includes("\n")) {
    return;
  }

  code.classList.add("command", "hljs", "nohighlight"); // its look, but its words are not touched again
  code.replaceChildren(
    ...words.match(/("[^"]*"|\S)+|\s+/g).map((word) => {
      const span = document.createElement("span");
      span.textContent = word;
      return word.trim() ? span : word;
    })
  );
}
