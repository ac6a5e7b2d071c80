using Dapper;

// Rows and parameters must be known while compiling: no tuples, no private classes, no 'object' that holds parameters.
[module: DapperAot]
