// Node's own import, past the test runner's: only there do module hooks see what the built bundle imports.
exports.nativeImport = (specifier) => import(specifier);
