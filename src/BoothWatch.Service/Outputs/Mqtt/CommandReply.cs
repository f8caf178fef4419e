namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>What became of a command that was handed to what obeys it.</summary>
/// <param name="Why">Why it was not obeyed; null when it was.</param>
/// <param name="Text">What was done, or why nothing was, in words.</param>
internal sealed record CommandReply(CommandRefusal? Why, string Text)
{
    /// <summary>It was done, or handed on.</summary>
    public static CommandReply Done(string text) => new(null, text);

    /// <summary>The payload lacks what the command needs.</summary>
    public static CommandReply Malformed(string text) => new(CommandRefusal.Malformed, text);

    /// <summary>It does not fit the state of the booth.</summary>
    public static CommandReply NotNow(string text) => new(CommandRefusal.NotNow, text);
}
