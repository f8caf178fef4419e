namespace BoothWatch.Service.Commands;

/// <summary>What a command reads from and writes to.</summary>
/// <param name="In">Standard input.</param>
/// <param name="Out">Answers.</param>
/// <param name="Error">Errors and what a person at a terminal should see beside the answers.</param>
public sealed record CommandStreams(TextReader In, TextWriter Out, TextWriter Error);
