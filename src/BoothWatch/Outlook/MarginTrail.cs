namespace BoothWatch.Outlook;

/// <summary>The margin of the last minutes, of one and the same mix: another mix begins a new trail, because its margin jumped and did not drift.</summary>
/// <remarks>Not safe for several threads.</remarks>
public sealed class MarginTrail
{
    /// <summary>Points kept at most: the window at ten a second. More often than that nothing is measured.</summary>
    private const int MostPoints = 12_000;

    private readonly Queue<(double AtS, double MarginC)> _points = [];
    private string? _mix;

    /// <summary>Adds a point.</summary>
    /// <param name="atS">When, s, on a steady clock.</param>
    /// <param name="mix">What the margin belongs to: coat, mix and retarder level in one word; null when there is no margin now.</param>
    /// <param name="marginC">Blush margin, °C.</param>
    public void Add(double atS, string? mix, double marginC)
    {
        if (mix is null || !double.IsFinite(marginC))
        {
            return;
        }

        if (mix != _mix)
        {
            _points.Clear();
            _mix = mix;
        }

        _points.Enqueue((atS, marginC));
        while (_points.Count > MostPoints || _points.Peek().AtS < atS - ClosingMargin.Window.TotalSeconds)
        {
            _points.Dequeue();
        }
    }

    /// <summary>The time left; null when there is nothing to say.</summary>
    /// <param name="nowS">The present on the same clock, s.</param>
    /// <param name="speed">Seconds of the shop in a second of the clock: 1, or more where a scripted day is compressed.</param>
    /// <param name="usedUpAtC">Margin that counts as used up, °C.</param>
    public ClosingMargin? Closing(double nowS, double speed = 1, double usedUpAtC = 0) =>
        ClosingMargin.Of(_points.Select(point => (point.AtS, point.MarginC - usedUpAtC)), nowS, ClosingMargin.Window / speed);
}
