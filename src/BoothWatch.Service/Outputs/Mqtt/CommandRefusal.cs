namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>Why a command was not obeyed.</summary>
public enum CommandRefusal
{
    /// <summary>It was sent to be retained, so it would come again at every connection.</summary>
    Retained,

    /// <summary>It is not on the documented list.</summary>
    Unknown,

    /// <summary>Its payload is longer than 4096 bytes.</summary>
    TooLong,

    /// <summary>Its payload is not a JSON object with <c>id</c>, <c>time</c> and what else the command needs.</summary>
    Malformed,

    /// <summary>Its time is more than a minute away from now.</summary>
    Stale,

    /// <summary>A command of the same <c>id</c> was taken before.</summary>
    Repeated,

    /// <summary>It is on the list, and nothing obeys it yet.</summary>
    NotObeyedYet,

    /// <summary>Too many commands were taken within the last minutes.</summary>
    TooMany,

    /// <summary>It does not fit the state of the booth, for example no job is running.</summary>
    NotNow,
}
