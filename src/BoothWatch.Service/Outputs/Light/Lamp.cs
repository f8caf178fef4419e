namespace BoothWatch.Service.Outputs.Light;

/// <summary>The outputs of the booth light. Colours after IEC 60073: green for a normal state, yellow for an abnormal one, red for danger to the work.</summary>
public enum Lamp
{
    /// <summary>Green lamp: spray.</summary>
    Green = 0,

    /// <summary>Yellow lamp: slow down.</summary>
    Yellow = 1,

    /// <summary>Red lamp: wait.</summary>
    Red = 2,

    /// <summary>Optional buzzer, heard when the verdict gets worse.</summary>
    Buzzer = 3,
}
