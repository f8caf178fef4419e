namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>What became of a command, as it is published.</summary>
/// <param name="Shop">Name of the shop.</param>
/// <param name="Booth">Name of the booth.</param>
/// <param name="Command">Name of the command, the last level of its topic.</param>
/// <param name="Id">Its id; null when it was refused before that was read.</param>
/// <param name="Done">True when it was obeyed.</param>
/// <param name="Refusal">Why it was not obeyed; null when it was.</param>
/// <param name="Text">The same in words.</param>
/// <param name="Time">When, UTC.</param>
internal sealed record CommandAnswer(
    string Shop,
    string Booth,
    string Command,
    string? Id,
    bool Done,
    CommandRefusal? Refusal,
    string Text,
    DateTime Time);
