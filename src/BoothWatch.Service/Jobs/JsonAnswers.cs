namespace BoothWatch.Service.Jobs;

/// <summary>The ways in which an address under /api answers: JSON, or a problem after RFC 9457.</summary>
internal static class JsonAnswers
{
#pragma warning disable CA1859 // the callers put these beside other answers, so they have the common type
    public static IResult Json<T>(T value) => TypedResults.Json(value, JobsJson.Options);

    /// <param name="status">HTTP status.</param>
    /// <param name="title">What went wrong, in few words.</param>
    /// <param name="detail">What, and the fix.</param>
    /// <param name="errors">Every error apart, where there are several.</param>
    public static IResult Problem(int status, string title, string detail, IReadOnlyList<string>? errors = null) => TypedResults.Problem(
        title: title,
        detail: detail,
        statusCode: status,
        extensions: errors is null ? null : new Dictionary<string, object?> { ["errors"] = errors });
#pragma warning restore CA1859
}
