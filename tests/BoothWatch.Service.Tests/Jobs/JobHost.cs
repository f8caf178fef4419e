using System.Text;
using System.Text.Json;
using BoothWatch.Service.Configuration;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;

namespace BoothWatch.Service.Tests.Jobs;

/// <summary>The whole service over a real server on a free port, its sensors emulated, its journal in a temporary folder.</summary>
public sealed class JobHost : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly string _folder;
    private readonly HttpClient _http = new();

    private JobHost(WebApplication app, string folder) => (_app, _folder) = (app, folder);

    public IServiceProvider Services => _app.Services;

    public string Url => _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();

    public static async Task<JobHost> Start(params (string Key, string Value)[] settings)
    {
        string folder = Directory.CreateTempSubdirectory("boothwatch-jobs-").FullName;
        (string Key, string Value)[] usual = [("page:url", "http://127.0.0.1:0"), ("series:folder", folder), ("jobs:demoPast", "false"), ("logging:level", "error")];
        IConfigurationRoot configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(usual.ToDictionary(s => s.Key, s => (string?)s.Value))
            .AddInMemoryCollection(settings.ToDictionary(s => s.Key, s => (string?)s.Value))
            .Build();
        WebApplication app = BoothHost.Build(new ConfigurationFile(null, configuration, []));
        await app.StartAsync();
        return new JobHost(app, folder);
    }

    public async Task<(int Status, JsonElement Body)> Post(string address, string json, string mediaType = "application/json", Action<HttpRequestMessage>? change = null)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, Url + address) { Content = new StringContent(json, Encoding.UTF8, mediaType) };
        change?.Invoke(request);
        using HttpResponseMessage answer = await _http.SendAsync(request);
        return ((int)answer.StatusCode, JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement.Clone());
    }

    public async Task<JsonElement> Get(string address) => JsonDocument.Parse(await Text(address)).RootElement.Clone();

    public Task<string> Text(string address) => _http.GetStringAsync(Url + address);

    public async Task<int> Status(string address)
    {
        using HttpResponseMessage answer = await _http.GetAsync(Url + address);
        return (int)answer.StatusCode;
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
        _http.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
