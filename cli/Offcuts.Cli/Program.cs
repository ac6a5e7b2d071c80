using Offcuts.Cli;
using Offcuts.Cli.Commands;

using var terminal = Terminal.Open(args);
using var signals = new Signals();
return await CommandLine.RunAsync(args, terminal, signals);
