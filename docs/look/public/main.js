// Formulas and what programs print are not code: colours only where a page names a language.
export default {
  configureHljs: (hljs) => hljs.configure({ languages: [] }),
};
