using System.Net;
using System.Text;
using System.Text.Json;
using BoothWatch.Service.Access;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Tests.Access;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
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
    private readonly HttpClient _http = new(new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() });

    private JobHost(WebApplication app, string folder) => (_app, _folder) = (app, folder);

    public IServiceProvider Services => _app.Services;

    public string Url => _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();

    /// <summary>Signs a browser of this machine in, once, while no secret is set.</summary>
    public string SignInLink => $"{Url}/sign-in#{Services.GetRequiredService<StartCode>().Current}";

    /// <summary>Starts, and signs this client in.</summary>
    public static async Task<JobHost> Start(params (string Key, string Value)[] settings) => await SignedIn(await StartSignedOut(null, settings));

    /// <summary>Starts with some services of the test's own in the place of others, and signs this client in.</summary>
    public static async Task<JobHost> StartWith(Action<IServiceCollection> services, params (string Key, string Value)[] settings) =>
        await SignedIn(await Launch(new ConfigurationFile(null, new ConfigurationBuilder().Build(), []), null, settings, services));

    /// <summary>Starts on a configuration file, with some settings over it, and signs this client in.</summary>
    public static async Task<JobHost> StartWithFile(string path, params (string Key, string Value)[] settings) =>
        await SignedIn(await Launch(ConfigurationFile.Read(path), null, settings));

    /// <summary>The same with other services in the place of some: a board with buses and pins of its own.</summary>
    public static async Task<JobHost> StartWithFile(string path, Action<IServiceCollection> more, params (string Key, string Value)[] settings) =>
        await SignedIn(await Launch(ConfigurationFile.Read(path), null, settings, more));

    private static async Task<JobHost> SignedIn(JobHost host)
    {
        string code = host.Services.GetRequiredService<StartCode>().Current;
        (int status, JsonElement answer) = await host.Post("/api/sign-in", $$"""{ "secret": "{{code}}" }""");
        return status == 200 ? host : throw new InvalidOperationException($"the start code was refused: {answer}");
    }

    /// <summary>Starts with or without a shared secret; nobody is signed in.</summary>
    public static Task<JobHost> StartSignedOut(string? secret, params (string Key, string Value)[] settings) =>
        Launch(new ConfigurationFile(null, new ConfigurationBuilder().Build(), []), secret, settings);

    private static async Task<JobHost> Launch(
        ConfigurationFile file, string? secret, (string Key, string Value)[] settings, Action<IServiceCollection>? more = null)
    {
        string folder = Directory.CreateTempSubdirectory("boothwatch-jobs-").FullName;
        (string Key, string Value)[] usual = [("page:url", "http://127.0.0.1:0"), ("series:folder", folder), ("jobs:demoPast", "false"), ("logging:level", "error")];
        IConfigurationRoot configuration = new ConfigurationBuilder()
            .AddConfiguration(file.Configuration)
            .AddInMemoryCollection(usual.ToDictionary(s => s.Key, s => (string?)s.Value))
            .AddInMemoryCollection(settings.ToDictionary(s => s.Key, s => (string?)s.Value))
            .Build();
        if (secret is not null)
        {
            SetSecret(AccessFolder.Of(configuration), secret);
        }

        WebApplication app = BoothHost.Build(
            file with { Configuration = configuration },
            null,
            services =>
            {
                services.AddSingleton<IStartupFilter, SeemsFrom>();
                more?.Invoke(services);
            });
        await app.StartAsync();
        return new JobHost(app, folder);
    }

    /// <summary>Sets the shared secret, hashed less slowly than in a shop.</summary>
    internal static void SetSecret(AccessFolder folder, string secret)
    {
        using SharedSecret shared = new(folder);
        shared.Set(SecretHash.Of(secret, iterations: 1000));
    }

    public async Task<(int Status, JsonElement Body)> Post(string address, string json, string mediaType = "application/json", Action<HttpRequestMessage>? change = null)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, Url + address) { Content = new StringContent(json, Encoding.UTF8, mediaType) };
        request.Headers.Add(AccessGate.ChangeHeader, "1");
        change?.Invoke(request);
        using HttpResponseMessage answer = await _http.SendAsync(request);
        return ((int)answer.StatusCode, JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement.Clone());
    }

    /// <summary>Sends anything and gives back the whole answer.</summary>
    public async Task<HttpResponseMessage> Send(HttpMethod method, string address, Action<HttpRequestMessage>? change = null)
    {
        using HttpRequestMessage request = new(method, Url + address);
        change?.Invoke(request);
        return await _http.SendAsync(request);
    }

    public async Task<JsonElement> Get(string address) => JsonDocument.Parse(await Text(address)).RootElement.Clone();

    public Task<string> Text(string address) => _http.GetStringAsync(Url + address);

    public async Task<int> Status(string address, Action<HttpRequestMessage>? change = null)
    {
        using HttpResponseMessage answer = await Send(HttpMethod.Get, address, change);
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
