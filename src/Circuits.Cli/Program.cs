namespace Circuits.Cli; internal static class Program { static int Main() => 0; }
