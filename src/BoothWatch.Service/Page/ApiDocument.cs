using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace BoothWatch.Service.Page;

/// <summary>
/// The OpenAPI document. It is made when it is first asked for, once, and the memory that this took is given back: left alone, the
/// generator leaves some 50 MB with the process, and so 15.
/// </summary>
internal sealed class ApiDocument([FromKeyedServices(ApiDocument.Name)] IOpenApiDocumentProvider provider) : IDisposable
{
    /// <summary>Name that the framework gives to an only document.</summary>
    public const string Name = "v1";

    private readonly SemaphoreSlim _gate = new(1);
    private byte[]? _bytes;

    public async Task<FileContentHttpResult> Answer(CancellationToken cancellationToken) =>
        TypedResults.Bytes(_bytes ?? await MakeAsync(cancellationToken), "application/json; charset=utf-8");

    public void Dispose() => _gate.Dispose();

    private async Task<byte[]> MakeAsync(CancellationToken cancellationToken)
    {
        await _gate.WaitAsync(cancellationToken);
        try
        {
            if (_bytes is null)
            {
                OpenApiDocument document = await provider.GetOpenApiDocumentAsync(cancellationToken);
                using MemoryStream text = new();
                await document.SerializeAsJsonAsync(text, OpenApiSpecVersion.OpenApi3_1, cancellationToken);
                _bytes = text.ToArray();
            }
        }
        finally
        {
            _gate.Release();
        }

        SpareMemory.GiveBack();
        return _bytes;
    }
}
