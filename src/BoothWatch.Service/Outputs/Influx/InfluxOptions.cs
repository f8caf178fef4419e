namespace BoothWatch.Service.Outputs.Influx;

/// <summary>Settings of shipping to InfluxDB 2.x, section <c>influx</c> of config/boothwatch.json.</summary>
public sealed class InfluxOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "influx";

    /// <summary>Address of the server, <c>http://HOST:PORT</c> or <c>https://HOST:PORT</c>. Default empty: nothing is shipped.</summary>
    public string Url { get; set; } = "";

    /// <summary>Organisation that owns the bucket. Default <c>boothwatch</c>.</summary>
    public string Org { get; set; } = "boothwatch";

    /// <summary>Bucket to write to. Default <c>boothwatch</c>. It must exist.</summary>
    public string Bucket { get; set; } = "boothwatch";

    /// <summary>File whose first line is a token that may write to the bucket. Default empty: see <see cref="Token"/>.</summary>
    public string TokenFile { get; set; } = "";

    /// <summary>The token itself, meant for the environment variable <c>BOOTHWATCH_influx__token</c>. Default empty: no token. Never logged.</summary>
    public string Token { get; set; } = "";

    /// <summary>Most rows in one request. Default 5000, range 1 to 50000.</summary>
    public int BatchRows { get; set; } = 5000;

    /// <summary>Time between two looks into the journal once all is shipped, s. Default 10, range 0.1 to 3600.</summary>
    public double EveryS { get; set; } = 10;

    /// <summary>Longest time for one request, s. Default 15, range 0.1 to 300.</summary>
    public double TimeoutS { get; set; } = 15;

    /// <summary>Longest wait between attempts while the server does not answer or refuses, s. Default 60, range 0.1 to 3600.</summary>
    public double LongestRetryS { get; set; } = 60;

    /// <summary>True when there is somewhere to ship to.</summary>
    internal bool IsOn => Url.Length > 0;
}
