// Stands for the built window: shows that a script of ours runs under the content policy.
document.querySelector('#state').textContent = 'started';
