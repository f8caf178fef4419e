namespace BoothWatch.Service.Page;

/// <summary>One line of the small print: a sensor or an output and how it fares.</summary>
/// <param name="Name">Who.</param>
/// <param name="State">One word: <c>good</c>, or what is wrong.</param>
/// <param name="Detail">More words.</param>
/// <param name="Good">True when nothing is wrong.</param>
public sealed record HealthLine(string Name, string State, string Detail, bool Good);
