import { mount } from 'svelte';
import '../styles/tokens.css';
import '../styles/base.css';
import Examples from './Examples.svelte';

mount(Examples, { target: document.getElementById('examples')! });
